import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { QuestionInstance } from '../../src/quiz/questions/question-instance.ts';
import { shareOut } from '../../src/quiz/share-out.ts';

function instance(asks: string): QuestionInstance {
  return {
    kind: 'order',
    asks,
    tells: [],
    level: 1,
    hardness: { nights: 0, hurdle: false },
    about: { nights: [], dates: [] },
    renderPrompt: () => [],
    renderWorking: () => [],
    renderItems: () => [],
  };
}

const share = (asks: string, papers: readonly string[]) =>
  shareOut(
    [...asks].map(instance),
    papers.map((paper) => new Set(paper)),
  )
    ?.map((each) => each.asks)
    .join('');

/** The most papers that can have one of their own: every choice tried. */
function countMost(asks: readonly string[], papers: readonly string[]): number {
  const [first, ...rest] = papers;
  if (first === undefined) return 0;
  const without = countMost(asks, rest);
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
  return Math.max(without, ...withEach);
}

describe('shareOut', () => {
  it('gives each paper one of its own where there are enough', () => {
    const hand = share('abcd', ['', '', '']) ?? '';
    // Those that come first are given out first, to whichever paper.
    expect([...hand].sort().join('')).toBe('abc');
  });

  it('moves others to make room: the second paper has only one left to it', () => {
    expect(share('ab', ['', 'b'])).toBe('ba');
  });

  it('lets papers share where there are too few', () => {
    expect(share('a', ['', ''])).toBe('aa');
  });

  it('gives nothing where a paper has them all', () => {
    expect(share('ab', ['', 'ab'])).toBeUndefined();
    expect(share('', [''])).toBeUndefined();
  });

  it('never repeats on a paper, and has as many different ones as can be', () => {
    const asks = fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { minLength: 1 });
    const papers = fc.array(fc.uniqueArray(fc.constantFrom('a', 'b', 'c', 'd', 'e'), { maxLength: 3 }), {
      minLength: 1,
      maxLength: 5,
    });
    fc.assert(
      fc.property(asks, papers, (all, lists) => {
        const written = lists.map((list) => list.join(''));
        const hand = share(all.join(''), written);
        if (hand === undefined) {
          expect(written.some((paper) => all.every((each) => paper.includes(each)))).toBe(true);
          return;
        }
        for (const [paper, each] of [...hand].entries()) expect(written[paper]).not.toContain(each);
        expect(new Set(hand).size).toBe(countMost(all, written));
      }),
    );
  });
});
