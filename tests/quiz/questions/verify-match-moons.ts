import type { Element, ElementContent } from 'hast';
import { getMoonIllumination, getMoonPosition } from 'suncalc';
import { expect } from 'vitest';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import { matchMoons } from '../../../src/quiz/questions/match-moons.ts';
import { areAllDifferent, readAloud, requireMatches } from './read-instance.ts';
import { sampleSome } from './sky-weeks.ts';
import { findSunwards, measureBetween } from './verify-lit-side.ts';

/** What a drawing of the Moon shows, read from its shapes. */
export interface DrawnMoon {
  readonly litFraction: number;
  /** Counter-clockwise from straight up; nothing where all is dark or all lit. */
  readonly limbDegrees: number | undefined;
}

function findShade(nodes: readonly ElementContent[]): Element | undefined {
  for (const node of nodes) {
    if (node.type !== 'element') continue;
    const { className } = node.properties;
    if (Array.isArray(className) && className.includes('moon-shade')) return node;
    const found = findShade(node.children);
    if (found !== undefined) return found;
  }
  return undefined;
}

/**
 * Reads a drawing: its shade is half the limb and then half an ellipse, whose half-axis across is the share of the radius
 * that the edge of the light lies from the middle; turned clockwise by so many degrees from the light being at the top.
 */
export function readDrawing(picture: readonly ElementContent[]): DrawnMoon {
  const shade = findShade(picture);
  if (shade === undefined) return { litFraction: 1, limbDegrees: undefined };
  if (shade.tagName === 'circle') return { litFraction: 0, limbDegrees: undefined };
  const path = /^M([\d.]+) 0A.*A[\d.]+ ([\d.]+) 0 0 ([01])/.exec(String(shade.properties['d']));
  const turn = /^rotate\((-?[\d.]+)\)$/.exec(String(shade.properties['transform']));
  if (path === null || turn === null) throw new Error('The shade of a Moon is drawn in another way.');
  const share = Number(path[2]) / Number(path[1]);
  return {
    litFraction: path[3] === '1' ? (1 - share) / 2 : (1 + share) / 2,
    limbDegrees: (360 - Number(turn[1])) % 360,
  };
}

/** Lit fractions that the words for a drawing stand for, each with a margin for suncalc. */
const AMOUNTS: readonly (readonly [words: RegExp, from: number, upTo: number])[] = [
  [/^A dark disc/, 0, 0.01],
  [/^A crescent as thin as a hair/, 0.01, 0.08],
  [/^A thin crescent/, 0.08, 0.25],
  [/^A broad crescent/, 0.25, 0.45],
  [/^Half of a disc/, 0.45, 0.55],
  [/^A little more than half/, 0.55, 0.7],
  [/^About three quarters/, 0.7, 0.88],
  [/^Nearly a whole disc/, 0.88, 0.99],
  [/^A whole disc/, 0.99, 1],
];

/**
 * Holds drawings and words of a week against suncalc: how much is lit, where the bright limb points, that the Moon is up
 * unless it is dark, that each name is the name of its date's night, and that no two of a question could be changed over.
 * @returns the levels
 */
export function verifyMatchMoons(facts: QuizFacts, seed: number): number[] {
  const { almanac } = facts;
  return sampleSome(requireMatches(matchMoons.list(facts)), 2, seed).map((instance) => {
    const pairs = instance.renderPairs();
    const drawn = pairs.map(({ right }) => readDrawing(right));
    pairs.forEach(({ left, right }, place) => {
      const night = almanac.nightOn(instance.about.dates[place] ?? '');
      expect(readAloud(left)).toBe(night.night.name);
      const { latitudeDegrees, longitudeDegrees } = almanac.place;
      const at = new Date(almanac.moonBestSeen(night).atMs);
      const { fraction } = getMoonIllumination(at);
      const { litFraction, limbDegrees } = drawn[place] ?? { litFraction: Number.NaN, limbDegrees: undefined };
      // Drawn to a hundredth of a pixel, and left out where it would lie under the rim.
      expect(Math.abs(litFraction - fraction), instance.asks).toBeLessThan(0.012);
      const words = readAloud(right);
      const amount = AMOUNTS.find(([pattern]) => pattern.test(words));
      expect(fraction).toBeGreaterThan((amount?.[1] ?? 1) - 0.003);
      expect(fraction).toBeLessThan((amount?.[2] ?? 0) + 0.003);
      const isDark = /^A dark disc/.test(words);
      if (!isDark) expect(getMoonPosition(at, latitudeDegrees, longitudeDegrees).altitude).toBeGreaterThan(-1.5);
      if (limbDegrees !== undefined && fraction > 0.03) {
        expect(measureBetween(limbDegrees, findSunwards(at.getTime(), almanac.place)), instance.asks).toBeLessThan(3);
      }
    });
    expect(areAllDifferent(pairs.map(({ left }) => readAloud(left)))).toBe(true);
    expect(areAllDifferent(pairs.map(({ right }) => readAloud(right)))).toBe(true);
    drawn.forEach((one, place) => {
      for (const other of drawn.slice(place + 1)) expect(areFarApart(one, other), instance.asks).toBe(true);
    });
    return instance.level;
  });
}

/** An eighth more or less lit, of one without an edge a twelfth, or lit from another side by 80 degrees or more. */
function areFarApart(one: DrawnMoon, other: DrawnMoon): boolean {
  const gap = Math.abs(one.litFraction - other.litFraction);
  const hasNone = one.limbDegrees === undefined || other.limbDegrees === undefined;
  if (gap > (hasNone ? 1 / 12 : 1 / 8)) return true;
  if (one.limbDegrees === undefined || other.limbDegrees === undefined) return false;
  return measureBetween(one.limbDegrees, other.limbDegrees) > 80;
}
