import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/content/diagnostic.ts';
import { checkQuestion } from '../../src/quiz/check-question.ts';
import type { QuestionSource } from '../../src/quiz/model.ts';
import { choice, computed, short } from './quiz-helpers.ts';

function check(source: QuestionSource): { good: boolean; messages: string[]; diagnostics: Diagnostic[] } {
  const diagnostics: Diagnostic[] = [];
  const good = checkQuestion(source, (diagnostic) => diagnostics.push(diagnostic));
  return { good, messages: diagnostics.map(({ message }) => message), diagnostics };
}

describe('checkQuestion', () => {
  it.each([
    ['two options', choice('Q', ['+a', 'b'])],
    ['eight options, several right', choice('Q', ['+a', '+b', '+c', 'd', 'e', 'f', 'g', 'h'])],
    ['options that differ by an accent', choice('Q', ['+pêche', 'péché'])],
    ['a short answer', short('Q', ['Hidden Moon'])],
    ['a computed question', computed('night-of-date')],
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
    ['options equal but for the two small sigmas', choice('Q', ['+ΟΔΟΣ', 'οδοσ']), /Options 1 and 2/],
    ['a prompt of spaces', choice('  ', ['+a', 'b']), /has no text/],
    ['options without text', choice('Q', ['+', '']), /Options 1 and 2 of this choice are both empty text/],
    ['no prompt', { ...choice('', ['+a', 'b']), prompt: [] }, /has no text/],
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
