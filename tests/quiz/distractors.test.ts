import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { hasDistractors, listDistractorSets, listRows, type OptionRing } from '../../src/quiz/distractors.ts';
import { foldText } from '../../src/quiz/fold-text.ts';

/*
 * What is asked of wrong options here follows Haladyna, Downing and Rodriguez, "A Review of Multiple-Choice Item-Writing
 * Guidelines for Classroom Assessment", Applied Measurement in Education 15(3), 2002; its guidelines are given from
 * memory: one right option only; options that do not overlap; wrong options all plausible, made from the errors learners
 * typically make; the place of the right one varied; lengths about equal; three options or so are enough.
 */

const TEXTS = Array.from({ length: 30 }, (_, place) => `n${place + 1}`);

function makeRing(right: number, more: Partial<OptionRing> = {}): OptionRing {
  return { texts: TEXTS, right: right - 1, across: 30 - right, ...more };
}

/** Sets as numbers from 1, each in order, with the right one in brackets left out. */
function listNumbers(ring: OptionRing): string[] {
  return listDistractorSets(ring).map((set) =>
    set
      .map(({ place }) => place + 1)
      .sort((one, other) => one - other)
      .join(' '),
  );
}

describe('listDistractorSets', () => {
  it('has neighbours in every way around the right one, and pairs across', () => {
    expect(listNumbers(makeRing(8))).toEqual(['5 6 7', '6 7 9', '7 9 10', '9 10 11', '7 23 24', '9 22 23']);
  });

  it('says which slip leads to each', () => {
    const reasons = Object.fromEntries(
      listDistractorSets(makeRing(8))
        .flat()
        .map(({ place, reason }) => [place + 1, reason]),
    );
    expect(reasons).toEqual({
      5: 'earlier',
      6: 'earlier',
      7: 'just-before',
      9: 'just-after',
      10: 'later',
      11: 'later',
      22: 'near-across',
      23: 'across',
      24: 'near-across',
    });
  });

  it.each([5, 6, 7, 8, 30])('shows four of %d so that each of them may be the right one', (length) => {
    const shown = new Map<string, number>();
    for (let right = 0; right < length; right++) {
      const ring = { texts: TEXTS.slice(0, length), right, across: length - 1 - right };
      for (const set of listDistractorSets(ring)) {
        const four = [right, ...set.map(({ place }) => place)].sort((one, other) => one - other).join();
        shown.set(four, (shown.get(four) ?? 0) + 1);
      }
    }
    expect(new Set(shown.values())).toEqual(new Set([4]));
  });

  it('goes around the end of the run', () => {
    expect(listNumbers(makeRing(1))).toEqual(['28 29 30', '2 29 30', '2 3 30', '2 3 4']);
  });

  it('has what is passed over in every set, and gives up what tells least', () => {
    const sets = listDistractorSets(makeRing(1, { notReached: [29], avoid: ['n29'] }));
    expect(sets.length).toBeGreaterThan(1);
    for (const set of sets) expect(set.find(({ place }) => place === 29)?.reason).toBe('not-reached');
    expect(sets.flat().map(({ place }) => place)).not.toContain(28);
    const pairs = listDistractorSets(makeRing(8, { notReached: [28] })).map((set) => set.map(({ reason }) => reason));
    expect(pairs).toContainEqual(['not-reached', 'just-before', 'across']);
  });

  it('never has two equal options, nor an empty set, whatever the texts', () => {
    const texts = fc.array(fc.constantFrom('a', 'A', 'b', ' b', 'c', 'd', '\u00E9', 'e\u0301', 'f', 'g', 'h', 'i'), {
      minLength: 1,
      maxLength: 40,
    });
    fc.assert(
      fc.property(texts, fc.nat(), fc.nat(), fc.nat(), fc.nat(), (list, chosen, avoided, far, missed) => {
        const folded = list.map(foldText);
        const at = (place: number) => place % list.length;
        const ring = {
          texts: folded,
          right: at(chosen),
          avoid: [folded[at(avoided)] ?? ''],
          across: at(far),
          notReached: missed % 2 === 0 ? [] : [at(missed)],
        };
        const sets = listDistractorSets(ring);
        expect(sets.length > 0).toBe(hasDistractors(ring));
        for (const set of sets) {
          const options = [at(chosen), ...set.map(({ place }) => place)].map((place) => folded[place]);
          expect(new Set(options).size).toBe(options.length);
          expect(set.length).toBeGreaterThan(0);
          expect(set.length).toBeLessThanOrEqual(3);
          for (const { place } of set) expect(ring.avoid).not.toContain(folded[place]);
        }
      }),
      { numRuns: 500 },
    );
  });

  it('offers nothing where there is no other text', () => {
    expect(listDistractorSets({ texts: ['a', 'a'], right: 0, across: 1 })).toEqual([]);
    expect(hasDistractors({ texts: ['a', 'a'], right: 0, across: 1 })).toBe(false);
  });
});

describe('listRows', () => {
  it('keeps the longest rows where one side is short', () => {
    expect(listRows([1], [2, 3, 4])).toEqual([
      [1, 2, 3],
      [2, 3, 4],
    ]);
    expect(listRows([], [])).toEqual([]);
  });
});
