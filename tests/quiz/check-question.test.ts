import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/content/diagnostic.ts';
import { checkQuestion } from '../../src/quiz/check-question.ts';
import type { QuestionSource } from '../../src/quiz/model.ts';
import { choice, computed, short, text } from './quiz-helpers.ts';

function check(source: QuestionSource): { good: boolean; messages: string[]; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const good = checkQuestion(source, (diagnostic) => diagnostics.push(diagnostic));
  return { good, messages: diagnostics.map(({ message }) => message), diagnostics };
}

const PLACE = { file: 'lesson.md', line: 1, column: 1 };
const common = { place: PLACE, prompt: text('Q') };
const order = (...items: readonly string[]): QuestionSource => ({ kind: 'order', ...common, items: items.map(text) });

/** Pairs written as "left:right". */
function match(...written: readonly string[]): QuestionSource {
  const pairs = written.map((pair) => {
    const [left = '', right = ''] = pair.split(':');
    return { left: text(left), right: text(right) };
  });
  return { kind: 'match', ...common, headings: [text('L'), text('R')], pairs };
}

function open(rows: readonly number[], marks?: number): QuestionSource {
  const rubric = rows.map((each) => ({ marks: each, words: 'why' }));
  return { kind: 'open', ...common, lines: 3, rubric, ...(marks === undefined ? {} : { marks }) };
}

const drawing: QuestionSource = { kind: 'draw', ...common, renderDrawing: () => [], description: 'a half Moon' };

describe('checkQuestion', () => {
  it.each([
    ['two options', choice('Q', ['+a', 'b'])],
    ['eight options, several right', choice('Q', ['+a', '+b', '+c', 'd', 'e', 'f', 'g', 'h'])],
    ['options that differ by an accent', choice('Q', ['+pêche', 'péché'])],
    ['a short answer', short('Q', ['Hidden Moon'])],
    ['a computed question', computed('night-of-date')],
    ['an order', order('a', 'b')],
    ['pairs', match('a:1', 'b:2')],
    ['an open answer', open([2, 1, 0])],
    ['an open answer with the marks of its rubric', open([2, 1], 2)],
    ['a drawing', drawing],
  ])('takes %s', (_title, source) => {
    expect(check(source)).toMatchObject({ good: true, messages: [] });
  });

  it.each([
    ['one option', choice('Q', ['+a']), /has `1` options, expected 2 to 8/],
    ['no options', choice('Q', []), /has `0` options/],
    ['nine options', choice('Q', ['+a', 'b', 'c', 'd', 'e', 'f', 'g', 'h', 'i']), /has `9` options.*leave some out/],
    ['no right option', choice('Q', ['a', 'b']), /No option of this choice is right/],
    ['only right options', choice('Q', ['+a', '+b', '+c']), /All `3` options of this choice are right/],
    ['equal options', choice('Q', ['+the Sun', 'a', 'the Sun']), /Options 1 and 3 of this choice are both `the Sun`/],
    ['options equal but for case', choice('Q', ['+The SUN', 'the sun']), /Options 1 and 2/],
    ['options equal but for white space', choice('Q', ['+the  Sun', ' the\u00A0Sun']), /Options 1 and 2/],
    ['options equal but for encoding', choice('Q', ['+\u00E9t\u00E9', 'e\u0301te\u0301']), /Options 1 and 2/],
    ['options equal but for what nobody sees', choice('Q', ['+Sun', 'S\u200Bun\u00AD']), /Options 1 and 2/],
    ['options equal but for the two small sigmas', choice('Q', ['+ΟΔΟΣ', 'οδοσ']), /Options 1 and 2/],
    ['a prompt of spaces', choice('  ', ['+a', 'b']), /has no text/],
    [
      'an option without text',
      choice('Q', ['+a', ' \u200B']),
      /Option 2 of this choice is empty, expected a text or a picture/,
    ],
    ['no prompt', { ...choice('', ['+a', 'b']), prompt: [] }, /has no text/],
    ['an order of one', order('a'), /has `1` things to put in order, expected 2 to 8; add more/],
    ['an order of nine', order(...'abcdefghi'), /has `9` things to put in order.*leave some out/],
    ['an order with equal items', order('a', 'b', 'A'), /Items 1 and 3 to put in order are both `A`/],
    ['an order with an empty item', order('a', '', 'b'), /Item 2 to put in order is empty/],
    ['pairs with an empty side', match('a:1', 'b:'), /Row 2 on the right is empty/],
    ['one pair', match('a:1'), /has `1` pairs to match, expected 2 to 8/],
    ['pairs with equal left sides', match('a:1', 'a:2'), /Rows 1 and 2 on the left are both `a`/],
    ['pairs with equal right sides', match('a:1', 'b:2', 'c:1'), /Rows 1 and 3 on the right are both `1`/],
    ['an empty rubric', open([]), /rubric is empty/],
    ['a rubric whose marks rise', open([1, 2]), /gives `2` after `1`, expected fewer/],
    ['a rubric with equal marks', open([2, 2]), /gives `2` after `2`/],
    ['marks that the rubric does not give', open([2, 1], 3), /`marks=3` and a rubric that gives up to `2`/],
    ['a short answer of spaces', short('Q', ['  ']), /has no answer/],
  ])('refuses %s', (_title, source, message) => {
    const { good, messages, diagnostics } = check(source);
    expect(good).toBe(false);
    expect(messages).toHaveLength(1);
    expect(messages[0]).toMatch(message);
    expect(messages[0]).not.toContain('\n');
    expect(diagnostics[0]).toMatchObject({ rule: 'quiz-question', severity: 'error', place: source.place });
  });

  it('tells pictures apart by their text alternative', () => {
    const picture = (alt: string) => ({ type: 'element' as const, tagName: 'img', properties: { alt }, children: [] });
    const make = (alts: readonly string[]): QuestionSource =>
      ({
        ...choice('Q', []),
        kind: 'choice',
        options: alts.map((alt, place) => ({ content: [picture(alt)], right: place === 0 })),
      }) as QuestionSource; // The spread of a union loses which member it is.
    expect(check(make(['a round Moon', 'a half Moon'])).good).toBe(true);
    expect(check(make(['a Moon', 'A moon'])).good).toBe(false);
  });
});
