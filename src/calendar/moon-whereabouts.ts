import type { Stretch } from './above-horizon.ts';
import { MS_PER_DAY } from './day-number.ts';
import type { InstantMs, Place } from './rules.ts';
import { computeStand, type Stand } from './sky.ts';

/**
 * Where the Moon is at an instant, as sure as children's words must be; no two of them hold at once.
 * `up-east`, `up-west`: well up, on that side of the line from north to south through the point overhead.
 * `has-set`, `will-rise`: well down; it was well up six hours before, or will be six hours after, but not both.
 */
export type MoonWhereabouts = 'up-east' | 'up-west' | 'has-set' | 'will-rise';

/** Hours within which the Moon set, or will rise: the words of the answers say as many. Our own choice. */
const WHEREABOUTS_HOURS = 6;

const REACH_MS = (WHEREABOUTS_HOURS * MS_PER_DAY) / 24;

/** Degrees above which nothing near a usual school hides the Moon: a fist at arm's length (common practice, no source). */
const WELL_UP_DEGREES = 10;

/**
 * Degrees below the horizon from which the Moon takes 20 minutes at least to come up, at the quickest, on the equator;
 * and no hill that the school stands on brings it up: the dip of the horizon from 1500 m is 1.2.
 */
const WELL_DOWN_DEGREES = -6;

/** Degrees from the north-south line that tell east from west at a glance; the Moon takes 50 minutes for them, or more. */
const ASIDE_DEGREES = 12;

/** Nearer to a pole (degrees of latitude) every direction is north or south: nobody says east there. */
const COMPASS_UP_TO_DEGREES = 85;

/**
 * Where the Moon is, or nothing where that is not beyond doubt: near the horizon or the north-south line, near a pole,
 * or down for a short or a long time.
 * @param moonUp When it is above the horizon, from six hours before to six hours after at least.
 */
export function findMoonWhereabouts(
  place: Place,
  atMs: InstantMs,
  moonUp: readonly Stretch[],
): MoonWhereabouts | undefined {
  if (moonUp.some(({ fromMs, untilMs }) => fromMs <= atMs && atMs < untilMs)) {
    return findSide(place, computeStand('moon', place, atMs));
  }
  const before = { fromMs: atMs - REACH_MS, untilMs: atMs };
  const after = { fromMs: atMs, untilMs: atMs + REACH_MS };
  const wasUp = isUpWithin(before, moonUp);
  // One of the two statements is true and the other false, also for who sees hills on the horizon.
  if (wasUp === isUpWithin(after, moonUp) || !isWell('down', place, atMs)) return undefined;
  const [up, down] = wasUp ? [before.fromMs, after.untilMs] : [after.untilMs, before.fromMs];
  if (!isWell('up', place, up) || !isWell('down', place, down)) return undefined;
  return wasUp ? 'has-set' : 'will-rise';
}

function isUpWithin(within: Stretch, moonUp: readonly Stretch[]): boolean {
  return moonUp.some(({ fromMs, untilMs }) => fromMs < within.untilMs && untilMs > within.fromMs);
}

function isWell(where: 'up' | 'down', place: Place, atMs: InstantMs): boolean {
  const { altitudeDegrees } = computeStand('moon', place, atMs);
  return where === 'up' ? altitudeDegrees >= WELL_UP_DEGREES : altitudeDegrees <= WELL_DOWN_DEGREES;
}

function findSide(place: Place, { altitudeDegrees, azimuthDegrees }: Stand): 'up-east' | 'up-west' | undefined {
  if (altitudeDegrees < WELL_UP_DEGREES || Math.abs(place.latitudeDegrees) > COMPASS_UP_TO_DEGREES) return undefined;
  const toRadians = Math.PI / 180;
  const aside = Math.asin(Math.cos(altitudeDegrees * toRadians) * Math.sin(azimuthDegrees * toRadians)) / toRadians;
  if (Math.abs(aside) < ASIDE_DEGREES) return undefined;
  return aside > 0 ? 'up-east' : 'up-west';
}
