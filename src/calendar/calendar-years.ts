import { computeDateParts } from './day-number.ts';
import { findHolding } from './find-holding.ts';
import { type Lunations, PHASES } from './lunations.ts';
import { createMemo } from './memo.ts';
import type { MonthOpening } from './month-openings.ts';
import type { NightLine } from './night-line.ts';
import type { CalendarRules } from './rules.ts';
import type { MarkerNight } from './year-markers.ts';

/** The place of a month in its year. */
export interface MonthPlace {
  /** The Gregorian year of the marker. */
  readonly year: number;
  /** 1 for the first month. */
  readonly number: number;
  readonly monthsInYear: number;
}

/** The years of one tradition at one place, by the lunations of their months. */
export interface CalendarYears {
  /** The lunation of a year's first month. */
  firstMonthOf(year: number): number;
  /** The lunation in which the phase falls by which the year of a month is judged. */
  phaseLunationOf(lunation: number): number;
  placeOf(lunation: number): MonthPlace;
}

/** What the sky and the rule say of months and years, before records. */
export interface MonthSources {
  /** How the rule alone opens the month of a lunation. */
  openingOf(lunation: number): MonthOpening;
  markerOf(year: number): MarkerNight;
}

/** First months of years kept: a lifetime. */
const YEARS_KEPT = 100;

/** A month that opens with the full Moon meets the new Moon and the first quarter in the next lunation. */
function countLunationsToPhase({ monthBegins, yearBegins }: Pick<CalendarRules, 'monthBegins' | 'yearBegins'>): number {
  const isEarly = PHASES.indexOf(yearBegins.phase) < PHASES.indexOf('full-moon');
  return monthBegins.at === 'full-moon' && isEarly ? 1 : 0;
}

/**
 * Lays out years. One bears the Gregorian year of its marker; the offset and the records move the nights of a month, but
 * not the phase by which its year is judged.
 * @throws RangeError from the calls for a year whose star does not come back.
 */
export function createCalendarYears(
  rules: Pick<CalendarRules, 'monthBegins' | 'yearBegins'>,
  line: NightLine,
  lunations: Lunations,
  { openingOf, markerOf }: MonthSources,
): CalendarYears {
  const toPhase = countLunationsToPhase(rules);
  const firstMonthOf = createMemo(YEARS_KEPT, (year: number) => {
    // Nights follow without gap: a phase falls on the marker's night or later when it is not before that night begins.
    const markerMs = line.beginningOf(markerOf(year).day).atMs;
    return lunations.firstFrom(rules.yearBegins.phase, markerMs) - toPhase;
  });
  const placeOf = (lunation: number) => {
    const near = computeDateParts(openingOf(lunation).nearDay).year;
    const year = findHolding(lunation, near, firstMonthOf);
    const first = firstMonthOf(year);
    return { year, number: lunation - first + 1, monthsInYear: firstMonthOf(year + 1) - first };
  };
  return { firstMonthOf, phaseLunationOf: (lunation) => lunation + toPhase, placeOf };
}
