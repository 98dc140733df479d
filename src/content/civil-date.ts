import { Temporal } from 'temporal-polyfill';
import { parseCivilDate, renderCivilDate } from '../calendar/day-number.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { WeekDay } from './types.ts';

/** The days of the week in the order of ISO 8601, Monday first. */
export const WEEK_DAYS: readonly WeekDay[] = [
  'monday',
  'tuesday',
  'wednesday',
  'thursday',
  'friday',
  'saturday',
  'sunday',
];

/** The first and the last date the computed calendar covers, both included. */
export const FIRST_DATE: CivilDate = '1800-01-01';
export const LAST_DATE: CivilDate = '2200-12-31';

/** True for a real date written `YYYY-MM-DD`; `2025-02-30` is none. */
export function isCivilDate(text: string): text is CivilDate {
  try {
    parseCivilDate(text);
    return true;
  } catch {
    return false;
  }
}

/** True for a real date written `YYYY-MM-DD` which the computed calendar covers. */
export function isCoveredDate(text: string): text is CivilDate {
  return isCivilDate(text) && text >= FIRST_DATE && text <= LAST_DATE;
}

/** The nearest date which the computed calendar covers. */
export function clampDate(date: CivilDate): CivilDate {
  if (date < FIRST_DATE) return FIRST_DATE;
  return date > LAST_DATE ? LAST_DATE : date;
}

/** True for a day every year has, written `MM-DD`; `02-29` is none. */
export function isMonthDay(text: string): boolean {
  return /^\d{2}-\d{2}$/.test(text) && isCivilDate(`2001-${text}`);
}

/** True for a time of day written `HH:MM`, `00:00` to `23:59`. */
export function isClockTime(text: string): boolean {
  return /^([01]\d|2[0-3]):[0-5]\d$/.test(text);
}

/** The day of the week of a real date. Throws RangeError for anything else. */
export function computeWeekDay(date: CivilDate): WeekDay {
  // 1970-01-01, day 0, was a Thursday.
  const place = parseCivilDate(date) + 3;
  const day = WEEK_DAYS[place - 7 * Math.floor(place / 7)];
  if (day === undefined) throw new RangeError(`No day of the week for ${date}.`);
  return day;
}

/** The date a number of days later, or earlier when negative. */
export function addDays(date: CivilDate, days: number): CivilDate {
  return renderCivilDate(parseCivilDate(date) + days);
}

/** The Monday on a date or the last one before it. */
export function computeMonday(date: CivilDate): CivilDate {
  return addDays(date, -WEEK_DAYS.indexOf(computeWeekDay(date)));
}

/**
 * The IANA time zone of a name, spelt as the zone data spell it, or nothing when this name is not known.
 * Bare offsets such as `+12:00` are none: they know nothing of daylight saving.
 */
export function findTimeZone(name: string): string | undefined {
  if (!/^[a-z]/i.test(name)) return undefined;
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(name).timeZoneId;
  } catch {
    return undefined;
  }
}
