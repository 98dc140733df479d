import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { shareOut } from '../../src/quiz/share-out.ts';
import { makeInstance } from './quiz-helpers.ts';

/** A letter an instance; what each paper has of the kind, and by other kinds. */
function share(
  [wanted, alike = '', rest = '']: readonly string[],
  ofKind: readonly string[],
  ofOthers: readonly string[] = [],
) {
  const make = (asks: string | undefined) => Array.from(asks ?? '', (each) => makeInstance(each));
  const papers = ofKind.map((asks, paper) => ({
    ofKind: new Set(asks),
    ofAll: new Set(asks + (ofOthers[paper] ?? '')),
  }));
  return shareOut(make(wanted), make(alike), make(rest), papers)
    ?.map(({ asks }) => asks)
    .join('');
}

/** The most papers that can have one of their own: every choice tried. */
function countMost(asks: readonly string[], papers: readonly string[]): number {
  const [first, ...rest] = papers;
  if (first === undefined) return 0;
  const withEach = asks
    .filter((each) => !first.includes(each))
    .map(
      (each) =>
        1 +
        countMost(
          asks.filter((other) => other !== each),
          rest,
        ),
    );
  return Math.max(countMost(asks, rest), ...withEach);
}

const sortLetters = (letters: string | undefined) => [...(letters ?? '')].sort().join('');

describe('shareOut', () => {
  it('gives out the wanted ones where they will do', () => {
    expect(share(['abc', 'd', 'e'], ['', '', ''])).toBe('abc');
  });

  it('moves others to make room: the second paper has only one left to it', () => {
    expect(share(['ab'], ['', 'b'])).toBe('ba');
  });

  it('takes one that is alike before any other, and one with the same fact before one of the rest', () => {
    expect(share(['a', 'b', 'c'], ['a'])).toBe('b');
    expect(share(['a', 'b', 'c'], ['ab'])).toBe('c');
    expect(share(['a', 'b', 'c'], [''], ['a'])).toBe('b');
    expect(share(['a', 'b', 'c'], [''], ['ab'])).toBe('a');
    expect(share(['a', '', 'c'], ['a'], ['c'])).toBe('c');
  });

  it('lets papers share where there are too few, each about as often', () => {
    expect(share(['a'], ['', ''])).toBe('aa');
    expect(sortLetters(share(['ab', 'c'], ['', '', '', '', '', '', '']))).toBe('aaabbcc');
  });

  it('takes the same question at two levels for one', () => {
    expect(share(['ab', 'a', 'ab'], ['', '', '', ''])).toBe('abab');
  });

  it('gives nothing where a paper has them all', () => {
    expect(share(['ab'], ['', 'ab'])).toBeUndefined();
    expect(share([''], [''])).toBeUndefined();
    expect(share(['a'], [])).toBe('');
  });

  it('never repeats on a paper, and has as many different ones as can be', () => {
    const letters = fc.constantFrom('a', 'b', 'c', 'd', 'e');
    const asks = fc.uniqueArray(letters, { minLength: 1 });
    const papers = fc.array(
      fc.record({ ofKind: fc.uniqueArray(letters, { maxLength: 3 }), ofOthers: fc.uniqueArray(letters) }),
      { minLength: 1, maxLength: 5 },
    );
    fc.assert(
      fc.property(asks, fc.nat(5), fc.nat(5), papers, (all, first, second, written) => {
        const [from, to] = [Math.min(first, second), Math.max(first, second)];
        const ranks = [all.slice(0, from), all.slice(from, to), all.slice(to)].map((rank) => rank.join(''));
        const ofKind = written.map((paper) => paper.ofKind.join(''));
        const ofOthers = written.map((paper) => paper.ofOthers.join(''));
        const hand = share(ranks, ofKind, ofOthers);
        if (hand === undefined) {
          expect(ofKind.some((paper) => all.every((each) => paper.includes(each)))).toBe(true);
          return;
        }
        for (const [paper, each] of [...hand].entries()) expect(ofKind[paper]).not.toContain(each);
        expect(new Set(hand).size).toBe(countMost(all, ofKind));
      }),
    );
  });
});
