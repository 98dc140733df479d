import { Temporal } from 'temporal-polyfill';
import { computeDateParts, type DayNumber, MS_PER_DAY, renderCivilDate, renderDigits } from './day-number.ts';
import { createMemo } from './memo.ts';
import type { InstantMs } from './rules.ts';

/** The civil time of one time zone. Local times are floored to what a clock shows, never rounded up. */
export interface CivilZone {
  /** Milliseconds that local time is ahead of universal time. */
  offsetMsAt(instantMs: InstantMs): number;
  /** The local date of an instant. */
  dayAt(instantMs: InstantMs): DayNumber;
  /** The first instant of a local date, or null for a date that the zone left out, such as 2011-12-30 in Apia. */
  findStartOfDay(day: DayNumber): InstantMs | null;
  /** The next local date that exists. */
  nextDay(day: DayNumber): DayNumber;
  /** The last local date before that exists. */
  previousDay(day: DayNumber): DayNumber;
  /**
   * `2026-07-29T17:25:41+12:00`. Local mean times with odd seconds take the nearest whole-minute offset, so that
   * the instant stays right (RFC 3339, section 5.8, last example).
   */
  renderLocal(instantMs: InstantMs): string;
  /** `17:25`, as the clock on the wall shows it. */
  renderClock(instantMs: InstantMs): string;
}

/** A stretch without a change of offset; the end is open. */
interface OffsetSpan {
  readonly fromMs: InstantMs;
  readonly untilMs: InstantMs;
  readonly offsetMs: number;
}

const MS_PER_MINUTE = 60_000;

/** Two changes a year for two centuries are 400; no zone of the 2025 data has more from 1900 to 2100. */
const SPANS_KEPT = 512;

/** Asks Temporal for the whole stretch around an instant, so that one question serves half a year of nights. */
function computeSpan(timeZone: string, instantMs: InstantMs): OffsetSpan {
  const at = Temporal.Instant.fromEpochMilliseconds(instantMs).toZonedDateTimeISO(timeZone);
  // `previous` looks strictly before, and changes fall on whole seconds: step over one that falls on this instant.
  const before = at.add({ milliseconds: 1 }).getTimeZoneTransition('previous');
  const after = at.getTimeZoneTransition('next');
  return {
    fromMs: before ? before.epochMilliseconds : Number.NEGATIVE_INFINITY,
    untilMs: after ? after.epochMilliseconds : Number.POSITIVE_INFINITY,
    offsetMs: at.offsetNanoseconds / 1e6,
  };
}

function createSpans(timeZone: string): (instantMs: InstantMs) => OffsetSpan {
  const spans: OffsetSpan[] = [];
  const holds = (span: OffsetSpan, instantMs: InstantMs) => span.fromMs <= instantMs && instantMs < span.untilMs;
  let latest: OffsetSpan | undefined;
  return (instantMs) => {
    if (latest && holds(latest, instantMs)) return latest;
    let span = spans.find((known) => holds(known, instantMs));
    if (!span) {
      if (spans.length >= SPANS_KEPT) spans.length = 0;
      span = computeSpan(timeZone, Math.floor(instantMs));
      spans.push(span);
    }
    latest = span;
    return span;
  };
}

/** The start of a date near a change of offset, where plain arithmetic does not do. */
function findStartOfOddDay(timeZone: string, day: DayNumber): InstantMs | null {
  const date = Temporal.PlainDate.from(computeDateParts(day));
  const start = date.toZonedDateTime(timeZone);
  return start.toPlainDate().equals(date) ? start.epochMilliseconds : null;
}

function requireTimeZone(timeZone: string): string {
  try {
    return Temporal.Instant.fromEpochMilliseconds(0).toZonedDateTimeISO(timeZone).timeZoneId;
  } catch (cause) {
    const advice = 'expected an IANA name, use one such as `Pacific/Auckland`';
    throw new RangeError(`Unexpected time zone \`${timeZone}\`, ${advice}.`, { cause });
  }
}

/** `+12:00` for an offset in whole minutes. */
function renderOffset(offsetMinutes: number): string {
  const size = Math.abs(offsetMinutes);
  const sign = offsetMinutes < 0 ? '-' : '+';
  return `${sign}${renderDigits(Math.floor(size / 60), 2)}:${renderDigits(size % 60, 2)}`;
}

/** `17:25:41` of a time given as milliseconds since a midnight. */
function renderTimeOfDay(localMs: number): string {
  const seconds = Math.floor((localMs - Math.floor(localMs / MS_PER_DAY) * MS_PER_DAY) / 1000);
  const minutes = Math.floor(seconds / 60);
  return [Math.floor(minutes / 60), minutes % 60, seconds % 60].map((part) => renderDigits(part, 2)).join(':');
}

function createCivilZone(name: string): CivilZone {
  const timeZone = requireTimeZone(name);
  const spanAt = createSpans(timeZone);
  const offsetMsAt = (instantMs: InstantMs) => spanAt(instantMs).offsetMs;
  const findStartOfDay = (day: DayNumber) => {
    const utcMidnightMs = day * MS_PER_DAY;
    const span = spanAt(utcMidnightMs - MS_PER_DAY);
    // Offsets are less than a day: if none changes from a day before to a day after, the start is plain arithmetic.
    if (utcMidnightMs + MS_PER_DAY < span.untilMs) return utcMidnightMs - span.offsetMs;
    return findStartOfOddDay(timeZone, day);
  };
  const step = (from: DayNumber, by: 1 | -1) => {
    let day = from + by;
    while (findStartOfDay(day) === null) day += by;
    return day;
  };
  return {
    offsetMsAt,
    dayAt: (instantMs) => Math.floor((instantMs + offsetMsAt(instantMs)) / MS_PER_DAY),
    findStartOfDay,
    nextDay: (day) => step(day, 1),
    previousDay: (day) => step(day, -1),
    renderLocal: (instantMs) => {
      const offsetMinutes = Math.round(offsetMsAt(instantMs) / MS_PER_MINUTE);
      const localMs = instantMs + offsetMinutes * MS_PER_MINUTE;
      const date = renderCivilDate(Math.floor(localMs / MS_PER_DAY));
      return `${date}T${renderTimeOfDay(localMs)}${renderOffset(offsetMinutes)}`;
    },
    renderClock: (instantMs) => renderTimeOfDay(instantMs + offsetMsAt(instantMs)).slice(0, 5),
  };
}

/**
 * The civil time of a zone. Asking again for the same zone is free.
 * @param timeZone IANA name, or a fixed offset such as `+08:00`.
 * @throws RangeError for a name that is not known.
 */
export const requireCivilZone: (timeZone: string) => CivilZone = createMemo(16, createCivilZone);
