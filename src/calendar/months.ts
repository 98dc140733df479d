import type { RunNight } from './almanac-types.ts';
import { type CalendarYears, createCalendarYears, type MonthSources } from './calendar-years.ts';
import type { DayNumber } from './day-number.ts';
import { computeRun } from './fit.ts';
import type { Lunations } from './lunations.ts';
import { createMemo } from './memo.ts';
import { createMonthBeginnings, type MonthBeginnings } from './month-beginnings.ts';
import { createMonthOpenings } from './month-openings.ts';
import { computeMonthSpan, type MonthSpan } from './month-span.ts';
import type { NightLine } from './night-line.ts';
import { listRecords, type SkyRecord } from './records.ts';
import type { CalendarRules } from './rules.ts';
import { createYearMarkers } from './year-markers.ts';

/** The months of one tradition at one place. */
export interface Months
  extends Pick<MonthBeginnings, 'findBeginning' | 'placeOf'>,
    Pick<CalendarYears, 'firstMonthOf' | 'phaseLunationOf'>,
    MonthSources {
  /** All named nights in order. */
  readonly run: readonly RunNight[];
  /** What was seen and announced, the weightier later. */
  readonly records: readonly SkyRecord[];
  /** The month that holds the night of an existing date. */
  monthOf(day: DayNumber): MonthSpan;
}

/** About three years of months. */
const MONTHS_KEPT = 40;

function createSources(rules: CalendarRules, line: NightLine, lunations: Lunations): MonthSources {
  return { openingOf: createMonthOpenings(rules, line, lunations), markerOf: createYearMarkers(rules, line) };
}

/**
 * Works out months and years. A month is known by the lunation of its opening phase.
 * @param line The nights of the place.
 * @param lunations The phases of the Moon.
 * @param given What is already known of the same calendar, or what is to be taken in its place.
 * @throws RangeError for a record of a night that the calendar does not have; from the calls, for months whose first
 *   crescent cannot be told and that no record gives, and for years whose star does not come back.
 */
export function createMonths(
  rules: CalendarRules,
  line: NightLine,
  lunations: Lunations,
  given: Partial<MonthSources> = {},
): Months {
  const sources = { ...createSources(rules, line, lunations), ...given };
  const { openingOf, markerOf } = sources;
  const run = computeRun(rules.groups);
  const records = listRecords(rules, run);
  const beginnings = createMonthBeginnings({ run, records, line, lunations, openingOf });
  const years = createCalendarYears(rules, line, lunations, sources);
  const source = { rules, run, line, lunations, openingOf, beginnings, years };
  const monthOfLunation = createMemo(MONTHS_KEPT, (lunation: number) => computeMonthSpan(source, lunation));
  return {
    run,
    records,
    openingOf,
    markerOf,
    monthOf: (day) => monthOfLunation(beginnings.lunationHolding(day)),
    findBeginning: beginnings.findBeginning,
    placeOf: beginnings.placeOf,
    firstMonthOf: years.firstMonthOf,
    phaseLunationOf: years.phaseLunationOf,
  };
}
