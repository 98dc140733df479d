import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../src/quiz/random.ts';
import { type RightPlaces, spreadPlaces } from '../../src/quiz/spread-places.ts';
import { countUp, expectUniform } from './expect-uniform.ts';

const counts = fc.array(fc.option(fc.integer({ min: 2, max: 8 }), { nil: undefined }), { maxLength: 20 });

function expectBalance(places: RightPlaces, optionCounts: RightPlaces): void {
  for (const count of new Set(optionCounts)) {
    const shown = places.filter((_, question) => optionCounts[question] === count);
    if (count === undefined) {
      expect(shown.filter((place) => place !== undefined)).toEqual([]);
      continue;
    }
    const uses = Array.from({ length: count }, (_, place) => shown.filter((each) => each === place).length);
    expect(uses.reduce((sum, each) => sum + each, 0)).toBe(shown.length);
    expect(Math.max(...uses) - Math.min(...uses)).toBeLessThanOrEqual(1);
  }
}

describe('spreadPlaces', () => {
  it('uses each place about equally often, whatever is to be avoided', () => {
    const avoid = fc.array(fc.option(fc.nat(7), { nil: undefined }), { maxLength: 20 });
    fc.assert(
      fc.property(counts, avoid, fc.string(), (optionCounts, avoided, seed) => {
        const places = spreadPlaces(optionCounts, avoided, createRandom(seed));
        expect(places).toHaveLength(optionCounts.length);
        expectBalance(places, optionCounts);
      }),
    );
  });

  it('has no right option at the place of the paper before, from paper to paper', () => {
    fc.assert(
      fc.property(counts, fc.string(), (optionCounts, seed) => {
        let before: RightPlaces = [];
        for (let paper = 0; paper < 12; paper++) {
          const now = spreadPlaces(optionCounts, before, createRandom(`${seed} ${paper}`));
          expect(now.filter((place, question) => place !== undefined && place === before[question])).toEqual([]);
          before = now;
        }
      }),
    );
  });

  it('holds to the balance where it cannot avoid a place', () => {
    const places = spreadPlaces([2, 2], [0, 0], createRandom('x'));
    expect([...places].sort()).toEqual([0, 1]);
  });

  it('goes from every place to every other equally often', () => {
    const moves = new Map<string, number>();
    for (let seed = 0; seed < 4800; seed++) {
      const random = createRandom(`${seed}`);
      const before = spreadPlaces([4, 4, 4], [], random);
      countUp(moves, `${before[1]} ${spreadPlaces([4, 4, 4], before, random)[1]}`);
    }
    expect(moves.size).toBe(12);
    expectUniform(moves.values());
  });
});
