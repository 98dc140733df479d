import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import type { LearnerPaper } from '../../quiz/model.ts';
import { type LearnerFrame, renderLearnerPage } from './learner-page.ts';
import { joinWithDots } from './page-context.ts';
import { pageStyles } from './page-styles.ts';
import { isLongPaper } from './paper-length.ts';
import { renderPaperQuestion } from './paper-question.ts';

/** Those who share the work of a group; a first name is written beside each. */
const ROLES = ['role-reader', 'role-writer', 'role-checker', 'role-drummer'] as const;

/**
 * The papers of one quiz, a group a sheet. Takes learners' papers alone, so that no answer can come in.
 * @param papers One or more, all of the same quiz.
 */
export function renderPaperPage(papers: readonly LearnerPaper[], frame: LearnerFrame): Root {
  const title = papers[0]?.title;
  if (title === undefined) throw new Error('A quiz without papers has no page.');
  const { labels } = frame;
  return renderLearnerPage(frame, {
    title,
    kind: 'paper-page',
    styles: pageStyles.paper,
    main: [
      h('div', { className: ['screen-only'] }, [
        h('h1', title),
        h('p', { className: ['eyebrow'] }, labels.count('papers', papers.length)),
      ]),
      ...papers.map((paper, index) => renderPaper(paper, index, frame)),
    ],
  });
}

function renderPaper(paper: LearnerPaper, index: number, { labels, date }: LearnerFrame): Element {
  const id = `paper-${index + 1}`;
  const minutes = paper.minutes === undefined ? '' : labels.count('minutes', paper.minutes);
  return h('section', { className: isLongPaper(paper) ? ['paper', 'dense'] : ['paper'], ariaLabelledBy: id }, [
    h('header', { className: ['paper-head'] }, [
      h('h2', { id, className: ['paper-group'] }, [
        h('span', { className: ['paper-group-word'] }, `${labels.text('quiz-group')} `),
        paper.group,
      ]),
      h('p', { className: ['paper-title'] }, paper.title),
      h(
        'p',
        { className: ['paper-facts'] },
        joinWithDots([labels.date(date, 'day'), minutes, labels.count('marks', paper.totalMarks)]),
      ),
    ]),
    h(
      'ul',
      { className: ['roles', 'plain-list'] },
      ROLES.map((role) => h('li', [h('span', labels.text(role)), h('span', { className: ['write-line'] })])),
    ),
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
