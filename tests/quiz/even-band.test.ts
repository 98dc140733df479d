import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { drawEvenBand, isEven } from '../../src/quiz/even-band.ts';
import type { Level } from '../../src/quiz/questions/question-instance.ts';
import { createRandom } from '../../src/quiz/random.ts';
import { expectUniform } from './expect-uniform.ts';

interface Item {
  readonly id: number;
  readonly level: Level;
  readonly hardness: { readonly nights: number; readonly hurdle: boolean };
}

function makeItems(nights: readonly number[], isHurdle: (nights: number) => boolean = () => false): Item[] {
  return nights.map((each, id) => ({ id, level: 1, hardness: { nights: each, hurdle: isHurdle(each) } }));
}

const UP_TO_TWELVE = [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12];
const draw = (items: readonly Item[], count: number, seed: number | string) =>
  drawEvenBand(items, count, createRandom(`${seed}`));
const nightsOf = (items: readonly Item[]) => items.map(({ hardness }) => hardness.nights).toSorted((a, b) => a - b);

describe('drawEvenBand', () => {
  it('keeps four counts within three nights, and draws every count over the seeds', () => {
    const seen = new Map<number, number>();
    for (let seed = 0; seed < 600; seed++) {
      const nights = nightsOf(draw(makeItems(UP_TO_TWELVE), 4, seed));
      expect(Math.max(...nights) - Math.min(...nights)).toBe(3);
      for (const each of nights) seen.set(each, (seen.get(each) ?? 0) + 1);
    }
    expect([...seen.keys()].toSorted((a, b) => a - b)).toEqual(UP_TO_TWELVE);
    // A count at an end lies in one band of the eight, one in the middle in four; none is rarer than one time in ten.
    expect(Math.min(...seen.values())).toBeGreaterThan(60);
  });

  it('draws one item with every item equally likely', () => {
    const counts = UP_TO_TWELVE.map(() => 0);
    for (let seed = 0; seed < 1100; seed++) {
      const [item] = draw(makeItems(UP_TO_TWELVE), 1, seed);
      counts[item?.id ?? -1] = (counts[item?.id ?? -1] ?? 0) + 1;
    }
    expectUniform(counts);
  });

  it('gives a hurdle to all or to none', () => {
    const items = makeItems(UP_TO_TWELVE, (nights) => nights > 5);
    for (let seed = 0; seed < 100; seed++) {
      expect(new Set(draw(items, 4, seed).map(({ hardness }) => hardness.hurdle)).size).toBe(1);
    }
  });

  it('gives all items one level', () => {
    const items = makeItems(UP_TO_TWELVE).map((item, place): Item => ({ ...item, level: place % 2 === 0 ? 1 : 3 }));
    for (let seed = 0; seed < 50; seed++) {
      expect(new Set(draw(items, 4, seed).map(({ level }) => level)).size).toBe(1);
    }
    expect(isEven(items.slice(0, 2))).toBe(false);
  });

  it('leaves a lone hurdle out', () => {
    const items = makeItems([0, 0, 0, 0, 1, 0], (nights) => nights === 1);
    for (let seed = 0; seed < 50; seed++) expect(nightsOf(draw(items, 4, seed))).toEqual([0, 0, 0, 0]);
  });

  it('spreads as little as it can where there are too few alike', () => {
    expect(nightsOf(draw(makeItems([2, 3, 9, 10, 12, 15]), 4, 1))).toEqual([9, 10, 12, 15]);
    expect(nightsOf(draw(makeItems([2, 3, 4]), 3, 1))).toEqual([2, 3, 4]);
    expect(
      nightsOf(
        draw(
          makeItems([2, 3, 9, 30], (nights) => nights === 9),
          4,
          1,
        ),
      ),
    ).toEqual([2, 3, 9, 30]);
  });

  it('draws of one level where a level has enough, hurdles together if it must, and of several only then', () => {
    const hardness = (nights: number) => ({ nights, hurdle: nights > 5 });
    const items: Item[] = [
      ...[1, 1, 1].map((level): Item => ({ id: level, level: 2, hardness: hardness(1) })),
      ...[4, 5, 6, 7].map((nights): Item => ({ id: nights, level: 1, hardness: hardness(nights) })),
    ];
    for (let seed = 0; seed < 20; seed++) {
      expect(nightsOf(draw(items, 4, seed))).toEqual([4, 5, 6, 7]);
      expect(new Set(draw(items, 5, seed).map(({ level }) => level)).size).toBe(2);
    }
  });

  const anyItem = fc.record({ level: fc.constantFrom<Level>(1, 2, 3), nights: fc.nat(14), hurdle: fc.boolean() });

  it('draws as many different items as asked for, in the same order from the same seed, as alike as can be', () => {
    const any = fc.array(anyItem, { minLength: 1, maxLength: 20 });
    fc.assert(
      fc.property(any, fc.nat(), fc.string(), (written, wanted, seed) => {
        const items = written.map(({ level, ...hardness }, id): Item => ({ id, level, hardness }));
        const count = wanted % (items.length + 1);
        const drawn = draw(items, count, seed);
        expect(new Set(drawn.map(({ id }) => id)).size).toBe(count);
        expect(draw(items, count, seed)).toEqual(drawn);
        // All that are even with one of them, from its count of nights on: the other way to see what can be had.
        const couldBeEven = items.some((least) => {
          const even = items.filter((item) => item.hardness.nights >= least.hardness.nights && isEven([least, item]));
          return even.length >= count;
        });
        if (couldBeEven) expect(isEven(drawn)).toBe(true);
        const ofLevel = (level: Level) => items.filter((item) => item.level === level);
        if (([1, 2, 3] as const).some((level) => ofLevel(level).length >= count)) {
          expect(new Set(drawn.map(({ level }) => level)).size).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('refuses to draw more than there are', () => {
    expect(() => draw(makeItems([2]), 2, 1)).toThrow(RangeError);
  });
});

describe('isEven', () => {
  it('allows three nights between the counts, and no hurdle beside none', () => {
    expect(isEven(makeItems([]))).toBe(true);
    expect(isEven(makeItems([4, 7, 5]))).toBe(true);
    expect(isEven(makeItems([4, 8]))).toBe(false);
    expect(isEven(makeItems([4, 5], (nights) => nights === 5))).toBe(false);
  });
});
