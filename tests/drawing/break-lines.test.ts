import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { breakLines } from '../../src/drawing/break-lines.ts';

const fills = (sizes: readonly number[], capacity: number): number[] =>
  breakLines(sizes, capacity).map((line) => line.reduce((sum, piece) => sum + piece.count, 0));

describe('breakLines', () => {
  it('takes as few lines as can be, as even as can be', () => {
    expect(fills([2, 5, 4, 4, 3, 5, 4, 3], 8)).toEqual([7, 8, 8, 7]);
    expect(fills([3, 3, 3, 3], 9)).toEqual([6, 6]);
  });

  it('splits only a group longer than a line, into like parts', () => {
    expect(breakLines([1, 12, 2], 8)).toEqual([
      [
        { group: 0, from: 0, count: 1 },
        { group: 1, from: 0, count: 6 },
      ],
      [
        { group: 1, from: 6, count: 6 },
        { group: 2, from: 0, count: 2 },
      ],
    ]);
  });

  it('passes over empty groups and gives no line for nothing', () => {
    expect(breakLines([0, 2, 0], 5)).toEqual([[{ group: 1, from: 0, count: 2 }]]);
    expect(breakLines([], 5)).toEqual([]);
  });

  it('keeps every night once and in order, no line over its capacity, no group split without need', () => {
    const sizes = fc.array(fc.integer({ min: 1, max: 12 }), { minLength: 1, maxLength: 14 });
    fc.assert(
      fc.property(sizes, fc.integer({ min: 1, max: 12 }), (groups, capacity) => {
        const lines = breakLines(groups, capacity);
        const nights = lines
          .flat()
          .flatMap((piece) =>
            Array.from({ length: piece.count }, (_, index) => `${piece.group}:${piece.from + index}`),
          );
        expect(nights).toEqual(
          groups.flatMap((size, group) => Array.from({ length: size }, (_, index) => `${group}:${index}`)),
        );
        expect(Math.max(...fills(groups, capacity))).toBeLessThanOrEqual(capacity);
        groups.forEach((size, group) => {
          const pieces = lines.flat().filter((piece) => piece.group === group);
          expect(pieces).toHaveLength(Math.ceil(size / capacity));
        });
      }),
    );
  });
});
