import { getMoonIllumination, getMoonPosition, getPosition } from 'suncalc';
import { expect } from 'vitest';
import type { Place } from '../../../src/calendar/rules.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import { litSide } from '../../../src/quiz/questions/lit-side.ts';
import { readAloud, requireChoices } from './read-instance.ts';
import { sampleSome } from './sky-weeks.ts';

/** Degrees counter-clockwise from straight up, by the words on a paper. */
export const SIDE_ANGLES: ReadonlyMap<string, number> = new Map([
  ['at the top', 0],
  ['at the top left', 45],
  ['on the left', 90],
  ['at the bottom left', 135],
  ['at the bottom', 180],
  ['at the bottom right', 225],
  ['on the right', 270],
  ['at the top right', 315],
]);

export function requireSideAngle(words: string): number {
  const angle = SIDE_ANGLES.get(words);
  if (angle === undefined) throw new Error(`No side is called ${words}.`);
  return angle;
}

/** Degrees from one direction to another, 0 to 180. */
export function measureBetween(one: number, other: number): number {
  const turn = Math.abs(one - other) % 360;
  return Math.min(turn, 360 - turn);
}

const RADIANS = Math.PI / 180;

/**
 * An altitude without the air that suncalc adds: what it adds to all that is below the horizon is 0.484 degrees; above,
 * Bennett's formula (Meeus, Astronomical Algorithms, 16.3) takes it off again.
 */
function takeOffAir(degrees: number): number {
  if (degrees < 0.484) return degrees - 0.484;
  return degrees - 1 / Math.tan((degrees + 7.31 / (degrees + 4.4)) * RADIANS) / 60;
}

/**
 * The direction from the Moon to the Sun in the sky of a place by spherical trigonometry in azimuth and altitude, from
 * suncalc's places of both. Azimuth grows to the right of who looks at the horizon.
 */
export function findSunwards(atMs: number, { latitudeDegrees, longitudeDegrees }: Place): number {
  const at = new Date(atMs);
  const moon = getMoonPosition(at, latitudeDegrees, longitudeDegrees);
  const sun = getPosition(at, latitudeDegrees, longitudeDegrees);
  const across = (sun.azimuth - moon.azimuth) * RADIANS;
  const [moonUp, sunUp] = [takeOffAir(moon.altitude) * RADIANS, takeOffAir(sun.altitude) * RADIANS];
  const right = Math.sin(across) * Math.cos(sunUp);
  const up = Math.sin(sunUp) * Math.cos(moonUp) - Math.cos(sunUp) * Math.sin(moonUp) * Math.cos(across);
  return (Math.atan2(-right, up) / RADIANS + 360) % 360;
}

/** The same from suncalc's position angle of the bright limb and its parallactic angle. */
function findBrightLimb(atMs: number, { latitudeDegrees, longitudeDegrees }: Place): number {
  const at = new Date(atMs);
  const { parallacticAngle } = getMoonPosition(at, latitudeDegrees, longitudeDegrees);
  return (getMoonIllumination(at).angle - parallacticAngle + 720) % 360;
}

/**
 * Holds the right sides of a week against two other paths: spherical trigonometry in azimuth and altitude from suncalc's
 * places of Sun and Moon, and suncalc's position angle with its parallactic angle. suncalc takes the limb from the
 * Earth's centre; seen: under 3 degrees of turn. The right word is at most 15 degrees off and the nearest other option 75,
 * so nobody could take another for right.
 * @returns the right sides
 */
export function verifyLitSide(facts: QuizFacts, seed: number): string[] {
  const { almanac } = facts;
  return sampleSome(requireChoices(litSide.list(facts)), 3, seed).map((instance) => {
    const [date = ''] = instance.about.dates;
    const { atMs } = almanac.moonBestSeen(almanac.nightOn(date));
    const right = readAloud(instance.renderRight());
    for (const angle of [findSunwards(atMs, almanac.place), findBrightLimb(atMs, almanac.place)]) {
      expect(measureBetween(requireSideAngle(right), angle), instance.asks).toBeLessThan(15 + 3);
    }
    return right;
  });
}
