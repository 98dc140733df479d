import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { QuizSheet } from '../../quiz/model.ts';

/**
 * A table to write the marks of every group in: a row a group, a column a question with its marks, and the total.
 * @param quizNameIds Ids of the elements that together name the quiz.
 */
export function renderMarkSheet(quiz: QuizSheet, quizNameIds: readonly string[], labels: Labels): Element {
  const first = quiz.key[0];
  const questions = first?.answers ?? [];
  const id = `${quizNameIds.at(-1)}-marks`;
  return h('div', { className: ['mark-sheet'] }, [
    h('section', { className: ['scroll'], ariaLabelledBy: [id, ...quizNameIds], tabIndex: 0 }, [
      h('table', [
        h('caption', [
          h('span', { id }, labels.text('mark-sheet')),
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
