import type { Almanac, NightRecord } from '../../calendar/almanac-types.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import { clampDate } from '../../content/civil-date.ts';
import type { School } from '../../content/types.ts';
import { findNightAfter, findNightBefore } from '../../quiz/questions/neighbours.ts';

/** How far the dates of a computed question may lie from the lesson. */
export const SPANS = ['week', 'month', 'term', 'year'] as const;
export type Span = (typeof SPANS)[number];

/** Dates, both included. */
export interface DateSpan {
  readonly from: CivilDate;
  readonly to: CivilDate;
}

/**
 * The dates of the calendar's month, or year, that holds a night, or of the school's term that holds its date; within
 * the dates that the calendar covers. Undefined where the date lies in no term.
 */
export function computeSpan(
  span: Exclude<Span, 'week'>,
  night: NightRecord,
  almanac: Almanac,
  terms: School['terms'],
): DateSpan | undefined {
  if (span === 'term') {
    const term = terms.find(({ from, to }) => from <= night.date && night.date <= to);
    return term && { from: clampDate(term.from), to: clampDate(term.to) };
  }
  const [first, last] = span === 'month' ? [night, night] : findYearEnds(night, almanac);
  return {
    from: clampDate(first.month.firstDate),
    to: clampDate(almanac.nightsOfMonth(last.date).at(-1)?.date ?? last.date),
  };
}

/** A night of the first month of a night's year, and one of the last, as far as the calendar can tell them. */
function findYearEnds(night: NightRecord, almanac: Almanac): [NightRecord, NightRecord] {
  const year = night.month.year;
  let first = night;
  let last = night;
  for (let next: NightRecord | undefined = night; next?.month.year === year; next = findMonthBefore(next, almanac)) {
    first = next;
  }
  for (let next: NightRecord | undefined = night; next?.month.year === year; next = findMonthAfter(next, almanac)) {
    last = next;
  }
  return [first, last];
}

function findMonthBefore({ date }: NightRecord, almanac: Almanac): NightRecord | undefined {
  const first = almanac.nightsOfMonth(date)[0];
  return first && findCoveredNight(findNightBefore(almanac, first));
}

function findMonthAfter({ date }: NightRecord, almanac: Almanac): NightRecord | undefined {
  const last = almanac.nightsOfMonth(date).at(-1);
  return last && findCoveredNight(findNightAfter(almanac, last));
}

/** Beside the first and the last date that are covered, some nights are known whose months are not asked for. */
function findCoveredNight(night: NightRecord | undefined): NightRecord | undefined {
  return night !== undefined && clampDate(night.date) === night.date ? night : undefined;
}
