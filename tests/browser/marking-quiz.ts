import { h } from 'hastscript';
import type { KeyAnswer, KeyOption, KeyPaper, QuizSheet } from '../../src/quiz/model.ts';

const text = (value: string) => [{ type: 'text' as const, value }];
const lettered = (letter: string) => ({ letter, content: text(`Ding ${letter}`) });
const option = (letter: string, isRight: boolean, means = ''): KeyOption => ({
  ...lettered(letter),
  right: isRight,
  means: means === '' ? [] : text(means),
});

/** One question of each form. The right letter of the first is the group's own. */
function makeAnswers(right: string): KeyAnswer[] {
  const forms: Pick<KeyAnswer, 'expected' | 'marks'>[] = [
    {
      marks: 1,
      expected: {
        kind: 'options',
        options: ['A', 'B', 'C', 'D'].map((letter) =>
          option(letter, letter === right, letter === right ? '' : 'Counted one night too many.'),
        ),
      },
    },
    {
      marks: 2,
      expected: {
        kind: 'options',
        options: [option('A', true), option('B', false, 'Took the dark half.'), option('C', true), option('D', false)],
      },
    },
    {
      marks: 1,
      expected: {
        kind: 'line',
        accepted: [text('3')],
        forgive: { case: true, accents: true },
        unit: 'nights',
        slips: [
          { answer: '4', means: [...text('Counted '), h('i', { lang: 'fr' }, 'cette nuit'), ...text(' as well.')] },
          { answer: '2', means: text('Left the last one out.') },
        ],
      },
    },
    {
      marks: 1,
      expected: {
        kind: 'line',
        accepted: [text('Hidden Moon'), text('The Hidden Moon')],
        forgive: { case: true, accents: true },
        slips: [],
      },
    },
    { marks: 3, expected: { kind: 'order', items: ['C', 'A', 'B'].map(lettered) } },
    {
      marks: 4,
      expected: {
        kind: 'match',
        pairs: ['B', 'D', 'A', 'C'].map((letter, index) => ({ left: text(`${index + 1}`), right: lettered(letter) })),
      },
    },
    {
      marks: 3,
      expected: {
        kind: 'lines',
        rubric: [
          { marks: 3, words: 'says why' },
          { marks: 1, words: 'says what' },
        ],
      },
    },
    { marks: 2, expected: { kind: 'disc', drawing: text('(a drawing)'), description: 'A half Moon.' } },
  ];
  return forms.map((form, index) => ({ ...form, number: index + 1, prompt: text(`Ask ${index + 1}?`), working: [] }));
}

/** What the whole paper is worth. */
export const TOTAL = 17;

/** A quiz as the key knows it: a question of each form for three groups, whose first answers are B, C and D. */
export function makeMarkingQuiz(number: number): QuizSheet {
  const key = [
    ['Heron', 'B'],
    ['Kelp', 'C'],
    ['Oyster', 'D'],
  ].map(([group = '', right = '']): KeyPaper => ({ group, answers: makeAnswers(right), totalMarks: TOTAL }));
  return { title: `Quiz ${number}`, number, papers: [], key };
}
