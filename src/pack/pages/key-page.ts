import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { KeyAnswer, KeyPaper, QuizSheet } from '../../quiz/model.ts';
import { renderPageShell } from '../page-shell.ts';
import { renderMarkSheet } from './mark-sheet.ts';
import { renderPackNav } from './pack-nav.ts';
import { joinWithDots, listPlacedLessons, type PageContext, type PlacedLesson } from './page-context.ts';
import { pageStyles } from './page-styles.ts';

/** All answers of the week's quizzes, each quiz with a mark sheet. Every section, and so every print, says whose it is. */
export function renderKeyPage(context: PageContext): Root {
  const { week, paths } = context;
  const { labels, plan } = week;
  const quizzes = listPlacedLessons(context).flatMap((placed) =>
    placed.lesson.quizzes.map((quiz, index) =>
      renderQuizKey(context, placed, quiz, placed.paths.keyAnchors[index] ?? ''),
    ),
  );
  return renderPageShell(
    {
      language: labels.language,
      title: `${labels.text('answer-key')}: ${plan.title}`,
      kind: 'key-page',
      styles: pageStyles.key,
      skipLabel: labels.text('skip-link'),
      runningLine: `${labels.text('answer-key')} · ${labels.text('teacher-only')} · ${plan.title}`,
      header: [
        renderPackNav(context, paths.key),
        h('div', { className: ['key-head'] }, [
          h('p', { className: ['eyebrow'] }, joinWithDots([plan.title, plan.for])),
          h('h1', labels.text('answer-key')),
          h('p', { className: ['teacher-only'] }, labels.text('teacher-only')),
        ]),
      ],
      main: quizzes.length === 0 ? [h('p', labels.text('no-quiz-this-week'))] : quizzes,
      footer: [h('p', labels.text('key-stays-with-teacher'))],
    },
    context.digest,
  );
}

function renderQuizKey({ week }: PageContext, { lesson }: PlacedLesson, quiz: QuizSheet, anchor: string): Element {
  const { labels } = week;
  const day = labels.date(lesson.tonight.date, 'day');
  // Two lessons may have quizzes of one title: the lesson is part of the section's name.
  const ids = { of: `${anchor}-of`, title: `${anchor}-title` };
  return h('section', { className: ['quiz-key'], id: anchor, ariaLabelledBy: [ids.of, ids.title] }, [
    h('header', { className: ['quiz-key-head'] }, [
      h('p', { className: ['eyebrow'], id: ids.of }, joinWithDots([day, lesson.head.title])),
      h('h2', { id: ids.title }, quiz.title),
    ]),
    ...quiz.key.map((paper) => renderGroupKey(paper, labels)),
    renderMarkSheet(quiz, [ids.of, ids.title], labels),
  ]);
}

/** One group's answers. The head is laid out as a table head, which print repeats on every sheet that the group runs on to. */
function renderGroupKey(paper: KeyPaper, labels: Labels): Element {
  return h('section', { className: ['group-key'] }, [
    h('header', { className: ['group-key-head'] }, [
      h('h3', paper.group),
      h('p', { className: ['key-total'] }, labels.count('marks', paper.totalMarks)),
      h('p', { className: ['teacher-only'] }, labels.text('teacher-only')),
    ]),
    h(
      'ol',
      { className: ['key-answers'] },
      paper.answers.map((answer) => renderAnswer(answer, labels)),
    ),
  ]);
}

function renderAnswer(answer: KeyAnswer, labels: Labels): Element {
  return h('li', { value: answer.number }, [
    h('div', { className: ['key-answer'] }, [
      h('div', { className: ['key-words'] }, [
        h('div', { className: ['key-prompt'] }, answer.prompt),
        h('ul', { className: ['key-right', 'plain-list'] }, renderRight(answer, labels)),
        ...(answer.working.length === 0 ? [] : [h('div', { className: ['key-working'] }, answer.working)]),
      ]),
      h('p', { className: ['marks'] }, labels.count('marks', answer.marks)),
    ]),
  ]);
}

/** Letter and text of each right option; or the shown spelling, and on a second line the others that count. */
function renderRight({ letters, answers }: KeyAnswer, labels: Labels): Element[] {
  if (letters.length > 0) {
    return letters.map((letter, index) => h('li', [h('strong', `${letter} `), ...(answers[index] ?? [])]));
  }
  const [shown = [], ...others] = answers;
  const also = others.flatMap((other, index) => (index === 0 ? other : [textNode(', '), ...other]));
  return [
    h('li', [h('strong', shown)]),
    ...(also.length === 0 ? [] : [h('li', { className: ['also'] }, [`${labels.text('also-accept')} `, ...also])]),
  ];
}

function textNode(value: string): ElementContent {
  return { type: 'text', value };
}
