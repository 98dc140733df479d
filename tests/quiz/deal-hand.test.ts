import { describe, expect, it } from 'vitest';
import { countLargestLevel, dealHand } from '../../src/quiz/deal-hand.ts';
import type { Level, QuestionInstance } from '../../src/quiz/questions/question-instance.ts';
import { createRandom } from '../../src/quiz/random.ts';
import { makeInstance } from './quiz-helpers.ts';

/** Instances of each level, as many as given, that all ask something else. */
function makePool(counts: Readonly<Partial<Record<Level, number>>>): QuestionInstance[] {
  return ([1, 2, 3] as const).flatMap((level) =>
    Array.from({ length: counts[level] ?? 0 }, (_, place) => makeInstance(`${level}${place}`, level)),
  );
}

const makePapers = (count: number) =>
  Array.from({ length: count }, () => ({ ofKind: new Set<string>(), ofAll: new Set<string>() }));

function dealMany(pool: readonly QuestionInstance[], papers: number, taken: readonly string[] = []) {
  return Array.from({ length: 100 }, (_, seed) => {
    const hand = dealHand(pool, new Set(taken), makePapers(papers), createRandom(`${seed}`));
    if (hand === undefined) throw new Error('Nothing was dealt.');
    return hand;
  });
}

const countDifferent = (hand: readonly QuestionInstance[]) => new Set(hand.map(({ asks }) => asks)).size;
const levelsOf = (hand: readonly QuestionInstance[]) => [...new Set(hand.map(({ level }) => level))];

describe('dealHand', () => {
  it('deals one level to all, each that has enough now and then', () => {
    const hands = dealMany(makePool({ 1: 3, 2: 4, 3: 6 }), 4);
    for (const hand of hands) expect([countDifferent(hand), levelsOf(hand).length]).toEqual([4, 1]);
    expect(new Set(hands.flatMap(levelsOf))).toEqual(new Set([2, 3]));
  });

  it('keeps to one level where only sides with and without a hurdle together have enough', () => {
    const pool = [
      ...makePool({ 2: 3 }),
      makeInstance('a', 1),
      makeInstance('b', 1),
      makeInstance('c', 1, { nights: 9, hurdle: true }),
      makeInstance('d', 1, { nights: 9, hurdle: true }),
    ];
    for (const hand of dealMany(pool, 4)) expect([countDifferent(hand), levelsOf(hand)]).toEqual([4, [1]]);
  });

  it('deals different ones of several levels where no level has enough', () => {
    for (const hand of dealMany(makePool({ 1: 3, 2: 3 }), 4)) {
      expect([countDifferent(hand), levelsOf(hand).length]).toEqual([4, 2]);
    }
  });

  it('deals what asks the same at several levels once', () => {
    const pool = ['a', 'b', 'c'].flatMap((asks) => ([1, 2, 3] as const).map((level) => makeInstance(asks, level)));
    for (const hand of dealMany(pool, 3)) expect([countDifferent(hand), levelsOf(hand).length]).toEqual([3, 1]);
    for (const hand of dealMany(pool, 7)) {
      const uses = ['a', 'b', 'c'].map((asks) => hand.filter((each) => each.asks === asks).length);
      expect(uses.sort()).toEqual([2, 2, 3]);
    }
  });

  it('leaves to other groups what other questions ask, where one level has enough beside it', () => {
    const taken = ['10', '11', '12', '13'];
    for (const hand of dealMany(makePool({ 1: 8 }), 4, taken)) {
      expect(hand.filter(({ asks }) => taken.includes(asks))).toEqual([]);
    }
    // Here it has not: then papers share over two questions, but of one level.
    for (const hand of dealMany(makePool({ 1: 7, 2: 3 }), 4, taken)) {
      expect([countDifferent(hand), levelsOf(hand)]).toEqual([4, [1]]);
    }
  });

  it('gives a paper something of the same level in the place of what it has', () => {
    const pool = makePool({ 1: 6, 2: 2 });
    for (let seed = 0; seed < 50; seed++) {
      const papers = makePapers(4).map((_, place) => {
        const asks = new Set([`1${place}`, '14']);
        return { ofKind: asks, ofAll: asks };
      });
      const hand = dealHand(pool, new Set(['10', '11', '12', '13', '14']), papers, createRandom(`${seed}`)) ?? [];
      expect([countDifferent(hand), levelsOf(hand)]).toEqual([4, [1]]);
      for (const [place, { asks }] of hand.entries()) expect(papers[place]?.ofKind.has(asks)).toBe(false);
    }
  });

  it('deals nothing where there is nothing, or nothing left for a paper', () => {
    const [paper = { ofKind: new Set<string>(), ofAll: new Set<string>() }] = makePapers(1);
    expect(dealHand([], new Set(), [paper], createRandom('x'))).toBeUndefined();
    const full = { ofKind: new Set(['10']), ofAll: new Set(['10']) };
    expect(dealHand(makePool({ 1: 1 }), new Set(['10']), [paper, full], createRandom('x'))).toBeUndefined();
    expect(dealHand(makePool({ 1: 1 }), new Set(), [], createRandom('x'))).toEqual([]);
  });
});

describe('countLargestLevel', () => {
  it('counts the instances of the level that has most', () => {
    expect(countLargestLevel([])).toBe(0);
    expect(countLargestLevel(makePool({ 1: 2, 2: 5, 3: 1 }))).toBe(5);
  });
});
