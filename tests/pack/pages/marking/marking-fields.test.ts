import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { describeAnswer } from '../../../../src/pack/pages/marking-fields.ts';
import type { ExpectedAnswer } from '../../../../src/quiz/model.ts';

const text = (value: string) => [{ type: 'text' as const, value }];
const lettered = (letter: string) => ({ letter, content: text(`thing ${letter}`) });
const describeExpected = (expected: ExpectedAnswer) =>
  describeAnswer({ number: 3, prompt: text('?'), expected, working: [], marks: 2 });

describe('what the marking help knows of an answer', () => {
  it('is the letters of a choice and those that are right', () => {
    const options = ['A', 'B', 'C'].map((letter) => ({ ...lettered(letter), right: letter !== 'B', means: [] }));
    expect(describeExpected({ kind: 'options', options })).toEqual({
      number: 3,
      marks: 2,
      kind: 'options',
      letters: 'ABC',
      right: 'AC',
    });
  });

  it('is the spellings of a line as they are read, its unit and its slips', () => {
    const accepted = [[h('span', { lang: 'fr' }, 'Lune '), ...text('ronde')], text('ronde')];
    const forgive = { case: true, accents: false };
    const slips = [{ answer: 'pleine', means: text('Took the phase.') }];
    expect(describeExpected({ kind: 'line', accepted, forgive, unit: 'nuits', slips })).toEqual({
      number: 3,
      marks: 2,
      kind: 'line',
      accepted: ['Lune ronde', 'ronde'],
      forgive,
      unit: 'nuits',
      slips: ['pleine'],
    });
    expect(describeExpected({ kind: 'line', accepted, forgive, slips: [] })).not.toHaveProperty('unit');
  });

  it('is the row of letters of an order and of pairs, and the letters of the paper', () => {
    const row = { number: 3, marks: 2, letters: 'ABC', right: 'CAB' };
    const letters = ['C', 'A', 'B'].map(lettered);
    expect(describeExpected({ kind: 'order', items: letters })).toEqual({ ...row, kind: 'order' });
    const pairs = letters.map((right) => ({ left: text('left'), right }));
    expect(describeExpected({ kind: 'match', pairs })).toEqual({ ...row, kind: 'match' });
  });

  it('is what a rubric may give, and of a drawing its marks alone', () => {
    const rubric = [
      { marks: 2, words: 'says why' },
      { marks: 1, words: 'says what' },
    ];
    expect(describeExpected({ kind: 'lines', rubric })).toEqual({ number: 3, marks: 2, kind: 'lines', rows: [2, 1] });
    const disc: ExpectedAnswer = { kind: 'disc', drawing: text('drawing'), description: 'A half Moon.' };
    expect(describeExpected(disc)).toEqual({ number: 3, marks: 2, kind: 'disc' });
  });
});
