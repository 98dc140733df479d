import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { QuizSheet } from '../../quiz/model.ts';

/** From so many groups on the rows are lower, so that the table still stands on one sheet. */
const MANY_GROUPS = 20;

/** Where the mark sheet of a quiz stands, and of which lesson it is. */
export interface MarkSheetPlace {
  /** Unique on the page. */
  readonly id: string;
  /** Of the element that names the lesson. */
  readonly lessonId: string;
  /** The same in words: printed alone, the sheet says it again. */
  readonly lesson: readonly ElementContent[];
}

/**
 * A table to write the marks of every group in: a row a group, a column a question with its marks, and the total. It is
 * printed on a sheet of its own, which says what it is.
 */
export function renderMarkSheet(quiz: QuizSheet, { id, lessonId, lesson }: MarkSheetPlace, labels: Labels): Element {
  const first = quiz.key[0];
  const questions = first?.answers ?? [];
  const nameId = `${id}-name`;
  const size = quiz.key.length > MANY_GROUPS ? ['many'] : [];
  return h('div', { className: ['mark-sheet', ...size], id }, [
    h('section', { className: ['scroll'], ariaLabelledBy: [nameId, lessonId], tabIndex: 0 }, [
      h('table', [
        h('caption', [
          h('span', { className: ['mark-sheet-of'] }, [...lesson]),
          ' ',
          h('span', { id: nameId }, labels.text('mark-sheet-of', { title: quiz.title })),
          ' ',
          h('span', { className: ['teacher-only'] }, labels.text('teacher-only')),
        ]),
        h('thead', [
          h('tr', [
            h('th', { scope: 'col' }, labels.text('quiz-group')),
            ...questions.map((question) => renderHead(String(question.number), labels.count('marks', question.marks))),
            renderHead(labels.text('total'), labels.count('marks', first?.totalMarks ?? 0)),
          ]),
        ]),
        h(
          'tbody',
          quiz.key.map((paper) =>
            h('tr', [
              h('th', { scope: 'row' }, paper.group),
              ...questions.map(() => h('td')),
              h('td', { className: ['sum'] }),
            ]),
          ),
        ),
      ]),
    ]),
  ]);
}

function renderHead(words: string, marks: string): Element {
  return h('th', { scope: 'col' }, [words, ' ', h('span', { className: ['marks'] }, marks)]);
}
