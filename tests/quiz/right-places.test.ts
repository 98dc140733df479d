import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createRandom } from '../../src/quiz/random.ts';
import { spreadRightPlaces } from '../../src/quiz/right-places.ts';

describe('spreadRightPlaces', () => {
  it('uses each place of equal questions as often as the others, give or take one', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 8 }),
        fc.integer({ min: 0, max: 20 }),
        fc.string(),
        (options, questions, seed) => {
          const places = spreadRightPlaces(Array<number>(questions).fill(options), createRandom(seed));
          const uses = Array.from({ length: options }, (_, place) => places.filter((each) => each === place).length);
          expect(places).toHaveLength(questions);
          expect(uses.reduce((sum, count) => sum + count, 0)).toBe(questions);
          expect(Math.max(...uses) - Math.min(...uses)).toBeLessThanOrEqual(1);
        },
      ),
    );
  });

  it('stays within the options of each question', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1, max: 8 }), { maxLength: 20 }), fc.string(), (counts, seed) => {
        spreadRightPlaces(counts, createRandom(seed)).forEach((place, question) => {
          expect(place).toBeGreaterThanOrEqual(0);
          expect(place).toBeLessThan(counts[question] ?? 0);
        });
      }),
    );
  });
});
