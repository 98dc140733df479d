import type { MonthRecord } from './almanac-types.ts';
import { computeDateParts, type DayNumber, dayNumberOf, renderCivilDate } from './day-number.ts';
import type { Lunations } from './lunations.ts';
import { PHASES } from './lunations.ts';
import { createMemo } from './memo.ts';
import { computeMonthName } from './month-name.ts';
import type { NightLine } from './night-line.ts';
import type { CalendarRules } from './rules.ts';
import { computeSeason } from './sky.ts';

/** A month with the dates of its nights, in order. */
interface MonthSpan {
  readonly record: MonthRecord;
  readonly days: readonly DayNumber[];
}

/** The months of one tradition at one place. */
export interface Months {
  /** The month that holds the night of an existing date. */
  monthOf(day: DayNumber): MonthSpan;
}

/** The parts of the rules that months depend on. */
type MonthRules = Pick<CalendarRules, 'monthBegins' | 'months' | 'yearBegins' | 'thirteenthMonth'>;

/** About three years of months. */
const MONTHS_KEPT = 40;

/** First months of years kept: all of 1900 to 2100. */
const YEARS_KEPT = 210;

/** Moves a date by whole nights, over existing dates only. */
function moveNights(line: NightLine, day: DayNumber, nights: number): DayNumber {
  let moved = day;
  for (let left = nights; left > 0; left -= 1) moved = line.zone.nextDay(moved);
  for (let left = nights; left < 0; left += 1) moved = line.zone.previousDay(moved);
  return moved;
}

/** The night of a year's marker: that of its date, or the one that holds the equinox or solstice. */
function computeMarkerDay(rules: MonthRules, line: NightLine, year: number): DayNumber {
  const marker = rules.yearBegins.onOrAfter;
  if (marker.kind !== 'date') return line.dayHolding(computeSeason(year, marker.month));
  const [month, day] = marker.monthDay.split('-').map(Number);
  if (month === undefined || day === undefined) throw new RangeError(`Unexpected marker \`${marker.monthDay}\`.`);
  // 29 February falls on 1 March in common years; a date that the zone left out gives way to the next.
  const date = dayNumberOf(year, month, day);
  return line.zone.findStartOfDay(date) === null ? line.zone.nextDay(date) : date;
}

/** The nights on which months begin, by the lunation in which their opening phase falls. */
function createFirstDays(rules: MonthRules, line: NightLine, lunations: Lunations): (lunation: number) => DayNumber {
  const opening = rules.monthBegins.at === 'conjunction' ? 'new-moon' : 'full-moon';
  return createMemo(MONTHS_KEPT, (lunation: number) =>
    moveNights(line, line.dayHolding(lunations.phaseInstant(lunation, opening)), rules.monthBegins.offset),
  );
}

/** The month that opens each year, by lunation. */
function createYears(rules: MonthRules, line: NightLine, lunations: Lunations): (year: number) => number {
  const { phase } = rules.yearBegins;
  const opensAtFull = rules.monthBegins.at === 'full-moon';
  // A month that opens with the full Moon meets the new Moon and the first quarter in the next lunation.
  const later = opensAtFull && PHASES.indexOf(phase) < PHASES.indexOf('full-moon') ? 1 : 0;
  return createMemo(YEARS_KEPT, (year: number) => {
    // Nights follow without gap: a phase falls on the marker's night or later when it is not before that night begins.
    const markerMs = line.beginningOf(computeMarkerDay(rules, line, year)).atMs;
    return lunations.firstFrom(phase, markerMs) - later;
  });
}

/**
 * Works out months and years. A month is known by the lunation of its opening phase; the offset moves its nights, but
 * not the phase by which its year is judged. A year bears the Gregorian year of its marker.
 * @param line The nights of the place.
 * @param lunations The phases of the Moon.
 */
export function createMonths(rules: MonthRules, line: NightLine, lunations: Lunations): Months {
  const firstDay = createFirstDays(rules, line, lunations);
  const firstMonthOf = createYears(rules, line, lunations);
  const yearOf = (lunation: number) => {
    let { year } = computeDateParts(firstDay(lunation));
    while (firstMonthOf(year) > lunation) year -= 1;
    while (firstMonthOf(year + 1) <= lunation) year += 1;
    return year;
  };
  const monthOfLunation = createMemo(MONTHS_KEPT, (lunation: number): MonthSpan => {
    const days: DayNumber[] = [];
    const end = firstDay(lunation + 1);
    for (let day = firstDay(lunation); day < end; day = line.zone.nextDay(day)) days.push(day);
    const year = yearOf(lunation);
    const number = lunation - firstMonthOf(year) + 1;
    const { month, intercalary } = computeMonthName(rules, number, firstMonthOf(year + 1) - firstMonthOf(year));
    const { name, say, meaning } = month;
    const words = { name, ...(say !== undefined && { say }), ...(meaning !== undefined && { meaning }) };
    const firstDate = renderCivilDate(firstDay(lunation));
    return { record: { ...words, number, year, firstDate, length: days.length, intercalary }, days };
  });
  return {
    monthOf: (day) => {
      let lunation = lunations.lunationAt(line.beginningOf(day).atMs);
      while (firstDay(lunation) > day) lunation -= 1;
      while (firstDay(lunation + 1) <= day) lunation += 1;
      return monthOfLunation(lunation);
    },
  };
}
