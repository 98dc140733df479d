import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { LearnerPaper } from '../../quiz/model.ts';
import { listRoles } from './group-roles.ts';
import { type LearnerFrame, renderLearnerPage } from './learner-page.ts';
import { joinWithDots } from './page-context.ts';
import { pageStyles } from './page-styles.ts';
import { areSetSmall } from './paper-length.ts';
import { renderPaperQuestion } from './paper-question.ts';

/**
 * The papers of one quiz, a group a sheet. Takes learners' papers alone, so that no answer can come in.
 * @param papers One or more, all of the same quiz.
 * @param quizOfWeek 1-based among all quizzes of the week: roles move on from one to the next.
 */
export function renderPaperPage(papers: readonly LearnerPaper[], quizOfWeek: number, frame: LearnerFrame): Root {
  const title = papers[0]?.title;
  if (title === undefined) throw new Error('A quiz without papers has no page.');
  const { labels } = frame;
  const isSmall = areSetSmall(papers);
  return renderLearnerPage(frame, {
    title,
    kind: 'paper-page',
    styles: pageStyles.paper,
    main: [
      h('div', { className: ['screen-only'] }, [
        h('h1', title),
        h('p', { className: ['eyebrow'] }, labels.count('papers', papers.length)),
      ]),
      ...papers.map((paper, index) => renderPaper(paper, { id: `paper-${index + 1}`, isSmall, quizOfWeek }, frame)),
    ],
  });
}

/** How one of the papers is set. */
interface PaperSetting {
  readonly id: string;
  readonly isSmall: boolean;
  readonly quizOfWeek: number;
}

function renderPaper(paper: LearnerPaper, { id, isSmall, quizOfWeek }: PaperSetting, frame: LearnerFrame): Element {
  const { labels } = frame;
  return h('section', { className: isSmall ? ['paper', 'dense'] : ['paper'], ariaLabelledBy: id }, [
    renderHead(paper, id, frame),
    renderRoles(quizOfWeek, labels),
    ...(paper.introduction.length === 0 ? [] : [h('div', { className: ['paper-introduction'] }, paper.introduction)]),
    h(
      'ol',
      { className: ['questions'] },
      paper.questions.map((question) => renderPaperQuestion(question, labels)),
    ),
    h('p', { className: ['paper-total'] }, [
      labels.text('total'),
      ' ',
      h('span', { className: ['write-line'] }),
      ` / ${paper.totalMarks}`,
    ]),
  ]);
}

/** Laid out as the head of a table, which print repeats on a second sheet: a loose sheet still says whose it is. */
function renderHead(paper: LearnerPaper, id: string, { labels, date }: LearnerFrame): Element {
  const minutes = paper.minutes === undefined ? '' : labels.count('minutes', paper.minutes);
  const questions = labels.count('questions', paper.questions.length);
  const marks = labels.count('marks', paper.totalMarks);
  return h('header', { className: ['paper-head'] }, [
    h('div', { className: ['paper-names'] }, [
      h('h2', { id, className: ['paper-group'] }, [
        h('span', { className: ['paper-group-word'] }, `${labels.text('quiz-group')} `),
        paper.group,
      ]),
      h('p', { className: ['paper-title'] }, paper.title),
      h('p', { className: ['paper-facts'] }, joinWithDots([labels.date(date, 'day'), minutes, questions, marks])),
    ]),
  ]);
}

/** A line for the first name of each, beside the role that the seat has this time. */
function renderRoles(quizOfWeek: number, labels: Labels): Element {
  return h(
    'ul',
    { className: ['roles', 'plain-list'] },
    listRoles(quizOfWeek).map((role, index) =>
      h('li', [
        h('span', { className: ['seat'] }, labels.text('seat-number', { n: index + 1 })),
        ' ',
        h('span', { className: ['role'] }, labels.text(role)),
        ' ',
        h('span', { className: ['write-line'] }),
      ]),
    ),
  );
}
