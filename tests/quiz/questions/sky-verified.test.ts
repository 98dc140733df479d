import { describe, expect, it } from 'vitest';
import { listSkyWeeks } from './sky-weeks.ts';
import { verifyGesture } from './verify-gesture.ts';
import { SIDE_ANGLES, verifyLitSide } from './verify-lit-side.ts';
import { verifyMatchMoons } from './verify-match-moons.ts';
import { verifyMoonUpAt } from './verify-moon-up-at.ts';
import { verifyRunLength } from './verify-run-length.ts';

function countEach<Item>(items: readonly Item[]): ReadonlyMap<Item, number> {
  const counts = new Map<Item, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return counts;
}

describe('questions about the sky and gestures, 1950 to 2050, three calendars, both hemispheres', () => {
  // 2,000 school weeks in four parts. In one pass each, since the nights of a week take longer than the questions about them.
  it.each([1, 2, 3, 4])('have answers that another path gives too, in 500 random school weeks, part %d', (part) => {
    const sides: string[] = [];
    const places: string[] = [];
    const levels = { moons: [] as number[], gestures: [] as number[], runs: [] as number[] };
    let seed = 1_000 * part;
    for (const facts of listSkyWeeks(500, part)) {
      seed += 1;
      sides.push(...verifyLitSide(facts, seed));
      places.push(...verifyMoonUpAt(facts, seed));
      levels.moons.push(...verifyMatchMoons(facts, seed));
      levels.gestures.push(...verifyGesture(facts, seed));
      levels.runs.push(...verifyRunLength(facts, seed));
    }
    for (const side of SIDE_ANGLES.keys()) expect(countEach(sides).get(side), side).toBeGreaterThan(10);
    for (const times of countEach(places).values()) expect(times).toBeGreaterThan(100);
    expect(countEach(places).size).toBe(4);
    expect(levels.moons.length).toBeGreaterThan(100);
    for (const level of [1, 2, 3]) {
      expect(countEach(levels.gestures).get(level), `gestures of level ${level}`).toBeGreaterThan(80);
      expect(countEach(levels.runs).get(level), `runs of level ${level}`).toBeGreaterThan(40);
    }
  });

  it('match Moons of all levels in a fortnight', () => {
    const levels: number[] = [];
    let week = 0;
    for (const facts of listSkyWeeks(240, 31, 13)) {
      week += 1;
      levels.push(...verifyMatchMoons(facts, week));
    }
    for (const level of [1, 2, 3]) expect(countEach(levels).get(level), `level ${level}`).toBeGreaterThan(20);
  });
});
