import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { areSetSmall } from '../../../src/pack/pages/paper-length.ts';
import type { AnswerSpace, LearnerPaper } from '../../../src/quiz/model.ts';

const text = (value: string) => [{ type: 'text' as const, value }];
const lettered = (words: string) => 'ABCD'.split('').map((letter) => ({ letter, content: text(words) }));
const picture = 'ABCD'.split('').map((letter) => ({ letter, content: [h('svg')] }));

function makePaper(spaces: readonly AnswerSpace[]): LearnerPaper {
  const questions = spaces.map((space, index) => ({ number: index + 1, prompt: text('Which one?'), marks: 1, space }));
  return { title: 'Quiz', group: 'Heron', introduction: [], questions, totalMarks: questions.length };
}

const repeat = (space: AnswerSpace, count: number) => makePaper(Array.from({ length: count }, () => space));

/** Each form with how many of it are a paper that is set small: fewer stand on one sheet, and more on two. */
const FORMS: readonly { form: string; space: AnswerSpace; from: number; upTo: number }[] = [
  { form: 'short options', space: { kind: 'options', several: false, options: lettered('short') }, from: 12, upTo: 17 },
  {
    form: 'long options',
    space: { kind: 'options', several: false, options: lettered('m'.repeat(40)) },
    from: 6,
    upTo: 8,
  },
  { form: 'pictures', space: { kind: 'options', several: false, options: picture }, from: 5, upTo: 6 },
  { form: 'lines', space: { kind: 'line', unit: 'nights' }, from: 10, upTo: 14 },
  { form: 'orders', space: { kind: 'order', items: lettered('short') }, from: 8, upTo: 11 },
  {
    form: 'pairs',
    space: { kind: 'match', headings: undefined, left: [1, 2, 3, 4].map(() => text('x')), right: lettered('short') },
    from: 4,
    upTo: 6,
  },
  {
    form: 'pairs with pictures',
    space: { kind: 'match', headings: undefined, left: [1, 2, 3, 4].map(() => text('x')), right: picture },
    from: 4,
    upTo: 5,
  },
  { form: 'open answers', space: { kind: 'lines', lines: 4 }, from: 4, upTo: 6 },
  { form: 'drawings', space: { kind: 'disc' }, from: 4, upTo: 4 },
];

describe('areSetSmall', () => {
  it.each(FORMS)('is true for papers of $from to $upTo $form', ({ space, from, upTo }) => {
    const small = Array.from({ length: 20 }, (_, index) => index + 1).filter((count) =>
      areSetSmall([repeat(space, count)]),
    );
    expect([small.at(0), small.at(-1)]).toEqual([from, upTo]);
  });

  it('goes by the longest paper of a quiz', () => {
    const lines = (count: number) => repeat({ kind: 'line' }, count);
    expect(areSetSmall([lines(5), lines(12), lines(5)])).toBe(true);
    expect(areSetSmall([lines(12), lines(20)])).toBe(false);
  });

  it('counts a picture in a question and the words before the questions', () => {
    const nine = repeat({ kind: 'line' }, 9);
    expect(areSetSmall([nine])).toBe(false);
    expect(areSetSmall([{ ...nine, introduction: text('Talk. '.repeat(40)) }])).toBe(true);
    const [first, ...others] = nine.questions;
    if (first === undefined) throw new Error('No question.');
    const shown = { ...first, prompt: [h('img', { src: 'images/a.png', alt: 'A half' })] };
    expect(areSetSmall([{ ...nine, questions: [shown, ...others] }])).toBe(true);
  });
});
