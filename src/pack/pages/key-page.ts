import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { KeyPaper, QuizSheet } from '../../quiz/model.ts';
import { renderKeyAnswer } from './key-answer.ts';
import { renderKeyGuide } from './key-guide.ts';
import { renderKeyShell } from './key-shell.ts';
import { renderMarkSheet } from './mark-sheet.ts';
import { renderMarkingAnswers, renderMarkingWords } from './marking-help.ts';
import { markingScript } from './marking-script.ts';
import {
  countQuizzesBefore,
  joinWithDots,
  listPlacedLessons,
  type PageContext,
  type PlacedLesson,
} from './page-context.ts';
import { pageStyles } from './page-styles.ts';

/**
 * All answers of a lesson's quizzes, each quiz with a mark sheet. Every section, and so every print, says whose it is.
 * @throws Error when the lesson has no quiz
 */
export function renderKeyPage(context: PageContext, placed: PlacedLesson): Root {
  const { labels } = context.week;
  const { lesson, paths } = placed;
  if (paths.key === undefined) throw new Error(`The lesson \`${lesson.slug}\` has no quiz.`);
  const before = countQuizzesBefore(listPlacedLessons(context), lesson);
  return renderKeyShell(context, {
    path: paths.key,
    of: nameLesson(context, placed),
    styles: pageStyles.key,
    script: markingScript,
    main: [
      ...lesson.quizzes.map((quiz, index) =>
        renderQuizKey(context, placed, quiz, before + index + 1, paths.keyAnchors[index] ?? ''),
      ),
      renderMarkingWords(labels),
    ],
  });
}

/** The day; where it has more than one lesson, their titles tell them apart. */
function nameLesson(context: PageContext, { lesson }: PlacedLesson): string {
  const { labels, lessons, plan } = context.week;
  const day = labels.date(lesson.tonight.date, 'day');
  const ofDay = lessons.filter(({ tonight }) => tonight.date === lesson.tonight.date);
  return `${day} · ${ofDay.length === 1 ? plan.title : lesson.head.title}`;
}

function renderQuizKey(
  { week }: PageContext,
  { lesson }: PlacedLesson,
  quiz: QuizSheet,
  quizOfWeek: number,
  anchor: string,
): Element {
  const { labels } = week;
  const ofLesson = joinWithDots([labels.date(lesson.tonight.date, 'day'), lesson.head.title]);
  // Two lessons may have quizzes of one title: the lesson is part of the section's name.
  const ids = { of: `${anchor}-of`, title: `${anchor}-title`, marks: `${anchor}-marks` };
  const groups = quiz.key.map((paper, index) => ({ paper, id: `${anchor}-g${index + 1}` }));
  return h('section', { className: ['quiz-key'], id: anchor, ariaLabelledBy: [ids.of, ids.title] }, [
    h('header', { className: ['quiz-key-head'] }, [
      h('p', { className: ['eyebrow'], id: ids.of }, ofLesson),
      h('h2', { id: ids.title }, quiz.title),
      renderJumps(
        [
          ...groups.map(({ paper, id }) => ({ id, words: paper.group })),
          { id: ids.marks, words: labels.text('mark-sheet') },
        ],
        labels,
      ),
    ]),
    renderKeyGuide(quiz, quizOfWeek, labels),
    ...groups.map(({ paper, id }) => renderGroupKey(paper, quiz.title, id, labels)),
    renderMarkSheet(quiz, { id: ids.marks, lessonId: ids.of, lesson: ofLesson }, labels),
    renderMarkingAnswers(quiz),
  ]);
}

/** Links to the parts of a quiz: a key is long. */
function renderJumps(parts: readonly { readonly id: string; readonly words: string }[], labels: Labels): Element {
  return h('p', { className: ['key-jumps', 'screen-only'] }, [
    labels.text('key-jump'),
    ...parts.flatMap(({ id, words }) => [' ', h('a', { href: `#${id}` }, words)]),
  ]);
}

/** One group's answers. The head is laid out as a table head, which print repeats on every sheet that the group runs on to. */
function renderGroupKey(paper: KeyPaper, title: string, id: string, labels: Labels): Element {
  return h('section', { className: ['group-key'], id }, [
    h('header', { className: ['group-key-head'] }, [
      h('h3', paper.group),
      h('p', { className: ['key-total'] }, joinWithDots([title, labels.count('marks', paper.totalMarks)])),
      h('p', { className: ['teacher-only'] }, labels.text('teacher-only')),
    ]),
    h(
      'ol',
      { className: ['key-answers'] },
      paper.answers.map((answer) => renderKeyAnswer(answer, `${id}-q${answer.number}`, labels)),
    ),
  ]);
}
