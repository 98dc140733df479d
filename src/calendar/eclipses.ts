import { listUp, type Stretch } from './above-horizon.ts';
import { MS_PER_DAY } from './day-number.ts';
import type { InstantMs, Place } from './rules.ts';
import {
  computeStand,
  computeSunAndMoon,
  computeUmbraAtMoon,
  type EclipseCourse,
  findLunarEclipse,
  findPhase,
  findSolarEclipse,
  type Stand,
} from './sky.ts';

/** How much of a disc is covered. */
interface Cover {
  /**
   * Magnitude: the part of the disc's diameter that is covered. Past 1 for a Moon deep in the shadow; of a total or
   * annular eclipse of the Sun, the Moon's diameter over the Sun's (as NASA's tables have it).
   */
  readonly magnitude: number;
  /** Obscuration: the part of the disc's area that is covered, 0 to 1. */
  readonly obscuration: number;
}

/** An eclipse that is seen from a place, if only in part. */
export interface Eclipse extends EclipseCourse {
  readonly of: 'sun' | 'moon';
  /**
   * The part of it, the penumbra's aside, during which it is seen: the Sun above the horizon; the Moon above it and the Sun
   * wholly below, for about moonrise and moonset an eclipsed Moon can stand over against a Sun that is up.
   */
  readonly seen: Stretch;
  /** Its deepest instant within `seen`, where Sun or Moon then stands, and how much is covered then. */
  readonly deepest: Stand & Cover;
}

/** Two discs, in any one unit. */
interface Discs {
  /** Of the one that is covered. */
  readonly radius: number;
  readonly coverRadius: number;
  /** Between the centres. */
  readonly apart: number;
}

/** Half the area that a chord cuts off a circle, given the distance of the chord from the centre. */
function computeCap(radius: number, distance: number): number {
  const ratio = Math.min(1, Math.max(-1, distance / radius));
  return radius * radius * (Math.acos(ratio) - ratio * Math.sqrt(1 - ratio * ratio));
}

/** The part of a disc's area that lies behind another disc, 0 to 1. */
export function computeObscuration({ radius, coverRadius, apart }: Discs): number {
  if (apart >= radius + coverRadius) return 0;
  if (apart <= Math.abs(radius - coverRadius)) return Math.min(1, (coverRadius / radius) ** 2);
  // Both circles share one chord: the lens is a cap of each.
  const chord = (apart * apart + radius * radius - coverRadius * coverRadius) / (2 * apart);
  const area = computeCap(radius, chord) + computeCap(coverRadius, apart - chord);
  return area / (Math.PI * radius * radius);
}

function computeMagnitude({ radius, coverRadius, apart }: Discs): number {
  return Math.max(0, (radius + coverRadius - apart) / (2 * radius));
}

/** How much of the Moon the Earth's umbra covers. */
function computeMoonCover(atMs: InstantMs): Cover {
  const { umbraRadiusKm, moonRadiusKm, offAxisKm } = computeUmbraAtMoon(atMs);
  const discs = { radius: moonRadiusKm, coverRadius: umbraRadiusKm, apart: offAxisKm };
  return { magnitude: computeMagnitude(discs), obscuration: computeObscuration(discs) };
}

/** How much of the Sun the Moon covers at a place. */
function computeSunCover(place: Place, atMs: InstantMs): Cover {
  const { apartDegrees, sunRadiusDegrees, moonRadiusDegrees } = computeSunAndMoon(place, atMs);
  const discs = { radius: sunRadiusDegrees, coverRadius: moonRadiusDegrees, apart: apartDegrees };
  const isCentral = apartDegrees <= Math.abs(sunRadiusDegrees - moonRadiusDegrees);
  const magnitude = isCentral ? moonRadiusDegrees / sunRadiusDegrees : computeMagnitude(discs);
  return { magnitude, obscuration: computeObscuration(discs) };
}

/** How far an instant lies outside a stretch. */
function computeGap({ fromMs, untilMs }: Stretch, atMs: InstantMs): number {
  return Math.max(0, fromMs - atMs, atMs - untilMs);
}

/** What is left of a stretch without others, which are in order and within it. */
function* cutOut({ fromMs, untilMs }: Stretch, others: readonly Stretch[]): Generator<Stretch> {
  let leftMs = fromMs;
  for (const other of others) {
    if (other.fromMs > leftMs) yield { fromMs: leftMs, untilMs: other.fromMs };
    leftMs = other.untilMs;
  }
  if (untilMs > leftMs) yield { fromMs: leftMs, untilMs };
}

function listSeen(of: Eclipse['of'], place: Place, within: Stretch): readonly Stretch[] {
  const up = listUp(of, place, within);
  return of === 'sun' ? up : up.flatMap((stretch) => [...cutOut(stretch, listUp('sun', place, stretch))]);
}

/** Null when nothing of it is seen. */
function findSeen(of: Eclipse['of'], place: Place, course: EclipseCourse): Eclipse | null {
  const { greatestMs } = course;
  let seen: Stretch | null = null;
  for (const stretch of listSeen(of, place, { fromMs: course.beginsMs, untilMs: course.endsMs })) {
    if (seen === null || computeGap(stretch, greatestMs) < computeGap(seen, greatestMs)) seen = stretch;
  }
  if (seen === null) return null;
  const atMs = Math.min(Math.max(greatestMs, seen.fromMs), seen.untilMs);
  const cover = of === 'sun' ? computeSunCover(place, atMs) : computeMoonCover(atMs);
  return { ...course, of, seen, deepest: { ...computeStand(of, place, atMs), ...cover } };
}

/**
 * The eclipses of Sun and Moon that are seen from a place, in order of time; lunar ones of the penumbra alone count,
 * though hardly anyone notices them. The horizon is level, as for rise and set. Of an eclipse that is seen twice, the Moon
 * setting and rising in the midst of it, the stretch next to the greatest is told. Left out is an eclipse of the Sun during
 * which the Sun both rises and sets: a polar day of an hour or two.
 * @param fromMs An eclipse is listed when some of what is seen of it lies at or after this instant.
 * @param untilMs And some before this one.
 */
export function listEclipses(place: Place, fromMs: InstantMs, untilMs: InstantMs): readonly Eclipse[] {
  // Greatest eclipse is within an hour of the phase, and an eclipse lasts three hours on either side of it at most.
  const searchMs = fromMs - MS_PER_DAY / 2;
  const searchDays = (untilMs - searchMs) / MS_PER_DAY + 0.5;
  const found: (Eclipse | null)[] = [];
  for (const newMoonMs of listPhases('new-moon', searchMs, searchDays)) {
    const course = findSolarEclipse(place, newMoonMs);
    found.push(course && findSeen('sun', place, course));
  }
  for (const fullMoonMs of listPhases('full-moon', searchMs, searchDays)) {
    const course = findLunarEclipse(fullMoonMs);
    found.push(course && findSeen('moon', place, course));
  }
  return found
    .filter((eclipse) => eclipse !== null)
    .filter(({ seen }) => seen.untilMs > fromMs && seen.fromMs < untilMs)
    .sort((one, other) => one.seen.fromMs - other.seen.fromMs);
}

function* listPhases(phase: 'new-moon' | 'full-moon', fromMs: InstantMs, days: number): Generator<InstantMs> {
  const endMs = fromMs + days * MS_PER_DAY;
  let searchMs = fromMs;
  while (searchMs < endMs) {
    const phaseMs = findPhase(phase, searchMs, (endMs - searchMs) / MS_PER_DAY);
    if (phaseMs === null) return;
    yield phaseMs;
    // Two like phases are more than 29 days apart.
    searchMs = phaseMs + 20 * MS_PER_DAY;
  }
}
