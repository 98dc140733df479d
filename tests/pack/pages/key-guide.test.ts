import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { renderKeyGuide } from '../../../src/pack/pages/key-guide.ts';
import type { ExpectedAnswer, QuizSheet } from '../../../src/quiz/model.ts';
import { readText } from '../render-pages.ts';

const text = (value: string) => [{ type: 'text' as const, value }];
const lettered = (letter: string) => ({ letter, content: text(letter) });
const option = (letter: string, right: boolean) => ({ ...lettered(letter), right, means: [] });

function render(expected: readonly ExpectedAnswer[], quizOfWeek = 1): string {
  const answers = expected.map((each, index) => ({
    number: index + 1,
    prompt: [],
    working: [],
    marks: 2,
    expected: each,
  }));
  const quiz: QuizSheet = { title: 'Quiz', number: 1, papers: [], key: [{ group: 'Heron', answers, totalMarks: 2 }] };
  return readText(renderKeyGuide(quiz, quizOfWeek, createLabels('en')));
}

const ONE_RIGHT: ExpectedAnswer = { kind: 'options', options: [option('A', true), option('B', false)] };
const SEVERAL_RIGHT: ExpectedAnswer = { kind: 'options', options: [option('A', true), option('B', true)] };
const ORDER: ExpectedAnswer = { kind: 'order', items: [lettered('B'), lettered('A')] };
const MATCH: ExpectedAnswer = { kind: 'match', pairs: [{ left: text('x'), right: lettered('A') }] };

describe('renderKeyGuide', () => {
  it('says how to mark what can be partly right, and only that', () => {
    expect(render([ONE_RIGHT])).not.toContain('How to mark');
    expect(render([SEVERAL_RIGHT])).toContain('each wrong tick takes a share away');
    expect(render([SEVERAL_RIGHT])).not.toContain('each letter in its right place');
    expect(render([ORDER])).toContain('each letter in its right place');
    expect(render([MATCH])).toContain('each right letter earns');
    expect(render([MATCH]).split('rounded down')).toHaveLength(2);
  });

  it('says which seat has which role this time', () => {
    expect(render([ONE_RIGHT], 2)).toContain('Seat 1: Writer · Seat 2: Checker · Seat 3: Drummer · Seat 4: Reader');
  });
});
