import { type DayNumber, MS_PER_DAY } from './day-number.ts';
import type { NightLine } from './night-line.ts';
import { computeMinutesApart, computeNightMargin, type NightMargin } from './night-margin.ts';
import type { DayBegins, InstantMs } from './rules.ts';
import { computeStand } from './sky.ts';

/**
 * An instant within an hour of the boundary of its night is a close call. An hour holds the doubt in the sky (two minutes
 * for the Moon, some minutes for refraction and the height of the horizon), the few minutes from a school to its keeper's
 * place, and the twilight by which people may mean sunset or dark.
 */
const CLOSE_MINUTES = 60;

const CLOSE_MS = CLOSE_MINUTES * 60_000;

/** Nearer to the equator the Sun rises and sets every day, by far. */
const SURE_LATITUDE_DEGREES = 60;

/** The Sun's refracted centre where its upper limb is on the horizon: its radius below. */
const SETTING_DEGREES = -0.27;

/** How near to that the Sun must pass for its rise and set to be in doubt: hills, and cold air, which lifts more. */
const GRAZING_DEGREES = 0.5;

/** A boundary that an instant is near to, so that it might as well belong to the night beyond. */
export interface NearBoundary extends NightMargin {
  /** The Sun only just sets or rises there, or only just does not, so that the boundary may lie elsewhere. */
  readonly isUnsure: boolean;
}

/** Where a night would begin if the Sun, which only just sets or rises then, did not, or the other way; null when it is sure. */
function findOtherBeginning(line: NightLine, dayBegins: DayBegins, day: DayNumber): InstantMs | null {
  if (dayBegins === 'midnight' || Math.abs(line.place.latitudeDegrees) < SURE_LATITUDE_DEGREES) return null;
  const noonMs = line.solarNoonOf(day);
  const turns = [noonMs, noonMs + (dayBegins === 'sunset' ? MS_PER_DAY : -MS_PER_DAY) / 2];
  const isGrazed = (atMs: InstantMs) =>
    Math.abs(computeStand('sun', line.place, atMs).altitudeDegrees - SETTING_DEGREES) <= GRAZING_DEGREES;
  const turnMs = turns.find(isGrazed);
  if (turnMs === undefined) return null;
  if (line.beginningOf(day).with === 'midnight') return turnMs;
  return line.zone.findStartOfDay(dayBegins === 'sunset' ? line.zone.nextDay(day) : day);
}

/** The boundary of its night that an instant is near to; null when there is no doubt in which night it falls. */
export function findNearBoundary(line: NightLine, dayBegins: DayBegins, atMs: InstantMs): NearBoundary | null {
  const margin = computeNightMargin(line, atMs);
  if (margin.minutes <= CLOSE_MINUTES) return { ...margin, isUnsure: false };
  const day = line.dayHolding(atMs);
  for (const each of [day, line.zone.nextDay(day)]) {
    const boundaryMs = line.beginningOf(each).atMs;
    const otherMs = findOtherBeginning(line, dayBegins, each) ?? boundaryMs;
    const isBetween =
      Math.min(boundaryMs, otherMs) - CLOSE_MS <= atMs && atMs <= Math.max(boundaryMs, otherMs) + CLOSE_MS;
    if (isBetween) return { boundaryMs, minutes: computeMinutesApart(atMs, boundaryMs), isUnsure: true };
  }
  return null;
}
