import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeFit, computeRun, markRepeats, type Pin } from '../../src/calendar/fit.ts';

const RUN = computeRun([
  { name: 'Low', meaning: 'of the group', nights: [{ name: 'A', say: 'ay', gesture: 'cover' }, { name: 'B' }] },
  { name: 'High', nights: [{ name: 'C', meaning: 'of the night' }] },
]);

describe('computeRun', () => {
  it('numbers nights through all groups and within each, and keeps what the night says of itself', () => {
    expect(RUN).toEqual([
      { name: 'A', say: 'ay', gesture: 'cover', number: 1, group: 'Low', groupNumber: 1, numberInGroup: 1 },
      { name: 'B', number: 2, group: 'Low', groupNumber: 1, numberInGroup: 2 },
      { name: 'C', meaning: 'of the night', number: 3, group: 'High', groupNumber: 2, numberInGroup: 1 },
    ]);
  });
});

/** A run from words such as `A B* C`: a star marks a flexible night. */
function runOf(words: string) {
  const nights = words.split(' ').map((word) => ({
    name: word.replace('*', ''),
    ...(word.endsWith('*') && { flexible: true }),
  }));
  return computeRun([{ name: 'All', nights }]);
}

function joinFit(words: string, length: number, pins: readonly Pin[] = [], start?: Pin): string {
  return computeFit(runOf(words), length, pins, start)
    .map(({ name }) => name)
    .join(' ');
}

describe('computeFit', () => {
  it('gives the nth night the nth name and repeats the last one', () => {
    expect(joinFit('A B C', 3)).toBe('A B C');
    expect(joinFit('A B C', 5)).toBe('A B C C C');
    expect(joinFit('A B C', 2)).toBe('A B');
    expect(joinFit('A', 3)).toBe('A A A');
  });

  it.each([
    // [what, names, nights, pins as [index, number], expected]
    ['an anchor where counting puts it anyway', 'A B C D', 4, [[2, 3]], 'A B C D'],
    ['one night late: the last name before it is repeated', 'A B C D', 5, [[3, 3]], 'A B B C D'],
    ['one night late: the flexible name is repeated', 'A B* X C D', 6, [[4, 4]], 'A B B X C D'],
    ['two nights late: the flexible name is said three times', 'A B* X C D', 7, [[5, 4]], 'A B B B X C D'],
    ['late: of two flexible names the last is repeated', 'A* B* X C', 5, [[4, 4]], 'A B B X C'],
    ['one night early: the name just before it is left out', 'A B C D', 3, [[1, 3]], 'A C D'],
    ['one night early: the flexible name is left out', 'A B* X C D', 4, [[2, 4]], 'A X C D'],
    ['early: of two flexible names the last is left out', 'A* B* X C', 3, [[2, 4]], 'A X C'],
    ['three nights early: flexible names first, then those before it', 'A B* X Y C D', 4, [[2, 5]], 'A X C D'],
    ['on night 1: the names before it are left out', 'A B C D', 2, [[0, 3]], 'C D'],
    ['the first name late: it is said from night 1 on', 'A B C', 5, [[2, 1]], 'A A A B C'],
    ['a short end: flexible names after the anchor are left out', 'A B C* D E', 4, [[1, 2]], 'A B D E'],
    ['a short end without flexible names: the last names wait', 'A B C D E', 4, [[1, 2]], 'A B C D'],
    ['a long end: the last flexible name is repeated', 'A B C* D E', 6, [[1, 2]], 'A B C C D E'],
    ['a flexible anchor may be repeated', 'A B* C', 4, [[1, 2]], 'A B B C'],
    [
      'two anchors, early and late',
      'A B C D E F',
      6,
      [
        [1, 3],
        [4, 5],
      ],
      'A C D D E F',
    ],
    [
      'anchors with nothing between',
      'A B C',
      5,
      [
        [0, 1],
        [3, 2],
      ],
      'A A A B C',
    ],
  ] as [string, string, number, [number, number][], string][])('fits %s', (_, words, length, pins, expected) => {
    expect(
      joinFit(
        words,
        length,
        pins.map(([index, number]) => ({ index, number })),
      ),
    ).toBe(expected);
  });

  it('keeps the first of pins that cannot all hold, and passes over one outside the month', () => {
    expect(
      joinFit('A B C D', 4, [
        { index: 2, number: 2 },
        { index: 1, number: 3 },
      ]),
    ).toBe('A A B C');
    expect(joinFit('A B C D', 3, [{ index: 3, number: 4 }])).toBe('A B C');
  });

  it('fits the nights from a start on, with the pins that are still to come', () => {
    const pins = [
      { index: 1, number: 1 },
      { index: 4, number: 5 },
    ];
    expect(joinFit('A B C D E F', 6, pins, { index: 2, number: 4 })).toBe('D D E F');
    // A pin that the start has passed, in nights or in names, no longer holds.
    expect(joinFit('A B C D E F', 6, pins, { index: 4, number: 3 })).toBe('C D');
    expect(joinFit('A B C D E F', 6, pins, { index: 2, number: 5 })).toBe('E F F F');
  });

  it('fits any list of 27 to 32 names to any month of 28 to 31 nights', () => {
    const names = fc
      .integer({ min: 27, max: 32 })
      .chain((count) =>
        fc.tuple(
          fc.array(fc.boolean(), { minLength: count, maxLength: count }),
          fc.integer({ min: 28, max: 31 }),
          fc.array(fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: 1, max: count })), { maxLength: 4 }),
        ),
      );
    fc.assert(
      fc.property(names, ([flexible, length, shifts]) => {
        const run = runOf(flexible.map((isFlexible, index) => `N${index + 1}${isFlexible ? '*' : ''}`).join(' '));
        const pins = shifts.map(([shift, number]) => ({ index: number - 1 + shift, number }));
        const fitted = computeFit(run, length, pins);
        expect(fitted).toHaveLength(length);
        // Names never run backwards.
        for (const [index, { number }] of fitted.entries()) {
          expect(number).toBeGreaterThanOrEqual(fitted[index - 1]?.number ?? 1);
        }
        // At least the first pin of the list that lies in the month is kept.
        const [first] = [...pins]
          .sort((a, b) => a.number - b.number)
          .filter(({ index }) => index >= 0 && index < length);
        if (first) expect(fitted[first.index]?.number).toBe(first.number);
        expect(computeFit(run, length, pins)).toEqual(fitted);
      }),
      { numRuns: 500 },
    );
  });
});

describe('markRepeats', () => {
  it('marks every name that an earlier night of the month has, also when others lie between', () => {
    const [a, b] = computeRun([{ name: 'All', nights: [{ name: 'A' }, { name: 'B' }] }]);
    if (!a || !b) throw new Error('There are two names.');
    expect(markRepeats([a, a, b, a]).map(({ repeat }) => repeat)).toEqual([false, true, false, true]);
  });
});
