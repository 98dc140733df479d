import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findHolding } from '../../src/calendar/find-holding.ts';

describe('findHolding', () => {
  const beginnings = [0, 29, 59, 88, 118, 148];
  /** Months of 30 days beyond the list on both sides. */
  const beginningOf = (number: number) => beginnings[number] ?? 30 * number;

  it.each([
    [0, 0],
    [28, 0],
    [29, 1],
    [58, 1],
    [59, 2],
    [-1, -1],
    [149, 5],
    [180, 6],
  ])('finds for %d the stretch %d', (point, number) => {
    for (const near of [-3, number, 9]) expect(findHolding(point, near, beginningOf)).toBe(number);
  });

  it('finds the same from anywhere', () => {
    const place = fc.integer({ min: -40, max: 40 });
    fc.assert(
      fc.property(fc.integer({ min: -900, max: 900 }), place, (point, near) => {
        const number = findHolding(point, near, beginningOf);
        expect(beginningOf(number)).toBeLessThanOrEqual(point);
        expect(beginningOf(number + 1)).toBeGreaterThan(point);
      }),
    );
  });
});
