import { type DayNumber, dayNumberOf } from './day-number.ts';
import { createRisings, type HeliacalRising } from './heliacal-rising.ts';
import { createMemo } from './memo.ts';
import type { NightLine } from './night-line.ts';
import type { CalendarRules, InstantMs, YearMarker } from './rules.ts';
import { computeSeason } from './sky.ts';

/** The marker of one year. */
export interface MarkerNight {
  /** The date of the marker's night. */
  readonly day: DayNumber;
  /** The equinox or solstice, or the instant at which the star was looked for; null for a date. */
  readonly atMs: InstantMs | null;
  readonly rising: HeliacalRising | null;
}

/** Markers kept: a lifetime of years. */
const YEARS_KEPT = 100;

/** 29 February falls on 1 March in common years; a date that the zone left out gives way to the next. */
function computeDateMarker(line: NightLine, monthDay: string, year: number): MarkerNight {
  const [month, day] = monthDay.split('-').map(Number);
  if (month === undefined || day === undefined) throw new RangeError(`Unexpected marker \`${monthDay}\`.`);
  const date = dayNumberOf(year, month, day);
  const isLeftOut = line.zone.findStartOfDay(date) === null;
  return { day: isLeftOut ? line.zone.nextDay(date) : date, atMs: null, rising: null };
}

function createFinder(marker: YearMarker, line: NightLine): (year: number) => MarkerNight {
  if (marker.kind === 'date') return (year) => computeDateMarker(line, marker.monthDay, year);
  if (marker.kind === 'rising') {
    const risingOf = createRisings(marker, line.place);
    return (year) => {
      const rising = risingOf(year);
      return { day: line.dayHolding(rising.morning.atMs), atMs: rising.morning.atMs, rising };
    };
  }
  return (year) => {
    const atMs = computeSeason(year, marker.month);
    return { day: line.dayHolding(atMs), atMs, rising: null };
  };
}

/**
 * The night of a year's marker: that of its date, or the one that holds the equinox, the solstice, or the instant before
 * dawn at which the star is back (before sunrise, a night that began at sunset bears the date of the evening).
 * @throws NoNightError from the call for a year whose star does not come back at this place.
 */
export function createYearMarkers(
  { yearBegins }: Pick<CalendarRules, 'yearBegins'>,
  line: NightLine,
): (year: number) => MarkerNight {
  return createMemo(YEARS_KEPT, createFinder(yearBegins.onOrAfter, line));
}
