import { type DayNumber, MS_PER_DAY, renderCivilDate } from './day-number.ts';
import type { NightLine } from './night-line.ts';
import type { CivilDate, CrescentVisibility, InstantMs } from './rules.ts';
import { computeCrescentGeometry, findRiseSet, isUp } from './sky.ts';

/**
 * Yallop's test of the evening crescent: B. D. Yallop, A Method for Predicting the First Sighting of the New Crescent
 * Moon, NAO Technical Note 69 (HM Nautical Almanac Office, 1997). Formulas and limits are as in the project's design.
 */

/** Yallop's class of an evening crescent. */
export type CrescentClass = CrescentVisibility | 'E' | 'F';

/** The evening crescent of one date by Yallop's test; angles in degrees, geocentric and airless, at best time. */
interface TestedCrescent {
  /** The date on whose evening it is looked for. */
  readonly date: CivilDate;
  readonly untested: null;
  readonly sunsetMs: InstantMs;
  readonly moonsetMs: InstantMs;
  /** Best time: sunset and four ninths of the way to moonset. */
  readonly bestMs: InstantMs;
  /** Altitude of the Moon less that of the Sun. */
  readonly arcvDegrees: number;
  /** Angle between Moon and Sun. */
  readonly arclDegrees: number;
  /** Width of the crescent for an observer on the ground, arc minutes. */
  readonly widthArcminutes: number;
  readonly q: number;
  readonly class: CrescentClass;
  /** Whether the class is the one asked for, or a better one. */
  readonly seen: boolean;
}

/**
 * Why the test cannot be made, which takes a sunset and a moonset: the Sun stays up or down, or the Moon does not set
 * within a day of sunset.
 */
type NoTest = 'no-sunset' | 'no-sunrise' | 'no-moonset';

/** An evening without a crescent to test: the test cannot be made, or the Moon is down at sunset, gone or not risen. */
interface UntestedCrescent {
  readonly date: CivilDate;
  readonly untested: NoTest | 'moon-down';
  /** null for `no-sunset` and `no-sunrise`. */
  readonly sunsetMs: InstantMs | null;
  readonly moonsetMs: null;
  readonly bestMs: null;
  readonly arcvDegrees: null;
  readonly arclDegrees: null;
  readonly widthArcminutes: null;
  readonly q: null;
  readonly class: 'none';
  readonly seen: false;
}

/** What the evening of one date shows. */
export type CrescentReport = TestedCrescent | UntestedCrescent;

/** How a search for the first crescent ended. */
export interface CrescentSearch {
  /** The evenings looked at, in order. */
  readonly evenings: readonly CrescentReport[];
  /** The first date that reaches the class, or null. */
  readonly day: DayNumber | null;
  /** Why there is none. */
  readonly failure: NoTest | 'not-reached' | null;
}

/** Least q of each class, itself left out; what is at or under the last is F. */
const CLASS_LIMITS = [
  ['A', 0.216],
  ['B', -0.014],
  ['C', -0.16],
  ['D', -0.232],
  ['E', -0.293],
] as const;

/** Evenings looked at from the conjunction on. At most places the crescent shows on the second or third. */
const EVENINGS = 5;

/** The Moon's semi-diameter as a part of its horizontal parallax: Yallop. */
const RADIUS_RATIO = 0.27245;

const RADIANS = Math.PI / 180;

const UNTESTED = {
  moonsetMs: null,
  bestMs: null,
  arcvDegrees: null,
  arclDegrees: null,
  widthArcminutes: null,
  q: null,
  class: 'none',
  seen: false,
} as const;

/** The least q of a class; a crescent must be above it. */
export function findClassLimit(visibility: CrescentVisibility): number {
  const limit = CLASS_LIMITS.find(([name]) => name === visibility)?.[1];
  if (limit === undefined) throw new RangeError(`Unexpected visibility \`${visibility}\`, expected A, B, C or D.`);
  return limit;
}

/** Yallop's class of a q. */
export function classifyCrescent(q: number): CrescentClass {
  return CLASS_LIMITS.find(([, limit]) => q > limit)?.[0] ?? 'F';
}

/** Yallop's q of an arc of vision (degrees) and a width (arc minutes). */
export function computeCrescentQ(arcvDegrees: number, widthArcminutes: number): number {
  const w = widthArcminutes;
  return (arcvDegrees - (11.8371 - 6.3226 * w + 0.7319 * w ** 2 - 0.1018 * w ** 3)) / 10;
}

/** The width of the crescent in arc minutes. */
export function computeCrescentWidth(parallaxDegrees: number, altitudeDegrees: number, arclDegrees: number): number {
  const semiDiameter = RADIUS_RATIO * parallaxDegrees * 60;
  const lifted = semiDiameter * (1 + Math.sin(altitudeDegrees * RADIANS) * Math.sin(parallaxDegrees * RADIANS));
  return lifted * (1 - Math.cos(arclDegrees * RADIANS));
}

/** When the Moon that is up at sunset sets, or why there is no such time: it is down, or does not set within a day. */
function findEveningMoonset(line: NightLine, sunsetMs: InstantMs): InstantMs | 'moon-down' | 'no-moonset' {
  const setMs = findRiseSet('moon', 'set', line.place, sunsetMs, 1);
  // A young Moon that sets within a quarter of a day of sunset was up; else whichever of set and rise comes first tells.
  if (setMs !== null && setMs - sunsetMs < MS_PER_DAY / 4) return setMs;
  const riseMs = findRiseSet('moon', 'rise', line.place, sunsetMs, 1);
  if (riseMs !== null) return setMs !== null && setMs < riseMs ? setMs : 'moon-down';
  if (setMs !== null) return setMs;
  return isUp('moon', line.place, sunsetMs) ? 'no-moonset' : 'moon-down';
}

function computeTest(line: NightLine, sunsetMs: InstantMs, moonsetMs: InstantMs, limit: number) {
  const bestMs = Math.round(sunsetMs + (4 / 9) * (moonsetMs - sunsetMs));
  const sky = computeCrescentGeometry(line.place, bestMs);
  const arcvDegrees = sky.moonAltitudeDegrees - sky.sunAltitudeDegrees;
  const arclDegrees = sky.elongationDegrees;
  const widthArcminutes = computeCrescentWidth(sky.parallaxDegrees, sky.moonAltitudeDegrees, arclDegrees);
  const q = computeCrescentQ(arcvDegrees, widthArcminutes);
  const judged = { q, class: classifyCrescent(q), seen: q > limit };
  return { untested: null, sunsetMs, moonsetMs, bestMs, arcvDegrees, arclDegrees, widthArcminutes, ...judged };
}

/** Tests the crescent on the evening of a date. @param limit The least q of the class asked for. */
function testEvening(line: NightLine, day: DayNumber, limit: number): CrescentReport {
  const sunsetMs = line.sunsetOf(day);
  const date = renderCivilDate(day);
  if (sunsetMs === null) {
    return { date, untested: line.sunStaysOn(day) === 'up' ? 'no-sunset' : 'no-sunrise', sunsetMs, ...UNTESTED };
  }
  const moonsetMs = findEveningMoonset(line, sunsetMs);
  if (typeof moonsetMs === 'string') return { date, untested: moonsetMs, sunsetMs, ...UNTESTED };
  return { date, ...computeTest(line, sunsetMs, moonsetMs, limit) };
}

/**
 * Looks for the first evening after a conjunction whose crescent reaches a class, for five evenings, beginning with the
 * first sunset at or after the conjunction. The evening of date D is the one that follows D's solar noon; it gives the
 * night of D its place under every `day-begins`. The search ends without a day where an evening has no sunset, where
 * the Moon does not set, so that there is no best time, or where no evening reaches the class.
 */
export function findFirstCrescent(
  line: NightLine,
  conjunctionMs: InstantMs,
  visibility: CrescentVisibility,
): CrescentSearch {
  const limit = findClassLimit(visibility);
  let day = line.zone.previousDay(line.dayHolding(conjunctionMs));
  const isBefore = (sunsetMs: InstantMs | null) => sunsetMs !== null && sunsetMs < conjunctionMs;
  while (isBefore(line.sunsetOf(day)) || line.solarNoonOf(day) + MS_PER_DAY / 2 < conjunctionMs) {
    day = line.zone.nextDay(day);
  }
  const evenings: CrescentReport[] = [];
  for (; evenings.length < EVENINGS; day = line.zone.nextDay(day)) {
    const report = testEvening(line, day, limit);
    const { seen, untested } = report;
    evenings.push(report);
    // A Moon that is down can be seen on the next evening; where the test cannot be made, nothing can be told.
    if (untested !== null && untested !== 'moon-down') return { evenings, day: null, failure: untested };
    if (seen) return { evenings, day, failure: null };
  }
  return { evenings, day: null, failure: 'not-reached' };
}
