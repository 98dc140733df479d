import type { Almanac, MonthRecord } from '../calendar/almanac-types.ts';
import { NoNightError } from '../calendar/no-night-error.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { addDays, clampDate, FIRST_DATE, LAST_DATE } from '../content/civil-date.ts';

/**
 * A year begins with the month whose phase falls on or after a date of the civil year of its number: that month may
 * begin a month before, and an offset or an observation moves it by some nights more. It ends where the next one begins.
 */
const DAYS_AROUND_YEAR = 62;

/** The most that a year has and a month takes: what lies farther from a month whose number is known is not of its year. */
const MONTHS_IN_LONG_YEAR = 13;
const MONTH_DAYS = 31;

/** Dates from one to another, both included. */
export interface DateRange {
  readonly from: CivilDate;
  readonly to: CivilDate;
}

/** A month with the dates of its first and last nights. */
export interface DatedMonth extends DateRange {
  readonly month: MonthRecord;
}

/** Dates whose month cannot be told. */
interface Gap extends DateRange {
  readonly month: null;
}

/** One of the calendar's years, as far as it can be told. */
export interface YearMonths {
  /** The months that lie whole within the dates that the kit answers for, in order. */
  readonly months: readonly DatedMonth[];
  /** Dates between those months, or beside them, whose month cannot be told: it may be one of the year. */
  readonly gaps: readonly DateRange[];
  /** False where the year begins before the dates that the kit answers for, or ends after them. */
  readonly isWhole: boolean;
}

/**
 * The months of one of the calendar's years.
 * @param year The number of the year: the civil year of its marker, with four digits.
 */
export function findMonthsOfYear(almanac: Almanac, year: number): YearMonths {
  const parts = [...walkYear(almanac, year)];
  const months = parts.filter(isMonth).filter(({ month }) => month.year === year);
  const [first, last] = [months[0], months.at(-1)];
  if (first === undefined || last === undefined) {
    // A year of which no month can be told stands for the civil year of its number.
    const gaps = cutGaps(parts, `${year}-01-01`, `${year}-12-31`);
    return { months, gaps, isWhole: gaps.length > 0 };
  }
  const [before, after] = [parts[parts.indexOf(first) - 1], parts[parts.indexOf(last) + 1]];
  const isBegun = first.month.number === 1 || (before !== undefined && isGap(before));
  return {
    months: months.filter(isCovered),
    gaps: cutGaps(
      parts,
      addDays(first.from, -MONTH_DAYS * (first.month.number - 1)),
      addDays(last.to, MONTH_DAYS * Math.max(MONTHS_IN_LONG_YEAR - last.month.number, 0)),
    ),
    isWhole: isBegun && after !== undefined && isCovered(first) && isCovered(last),
  };
}

/** What lies of the gaps between two dates, both included. */
function cutGaps(parts: readonly (DatedMonth | Gap)[], first: CivilDate, last: CivilDate): readonly DateRange[] {
  return parts
    .filter(isGap)
    .filter(({ from, to }) => from <= last && to >= first)
    .map(({ from, to }) => ({ from: [from, first].sort()[1] ?? from, to: [to, last].sort()[0] ?? to }));
}

function isGap(part: DatedMonth | Gap): part is Gap {
  return part.month === null;
}

function isMonth(part: DatedMonth | Gap): part is DatedMonth {
  return part.month !== null;
}

function isCovered({ from, to }: DateRange): boolean {
  return from >= FIRST_DATE && to <= LAST_DATE;
}

/** Months and gaps from before a year, without a break, to the first that is known to come after it. */
function* walkYear(almanac: Almanac, year: number): Generator<DatedMonth | Gap> {
  const until = clampDate(addDays(`${year + 1}-12-31`, DAYS_AROUND_YEAR));
  let date = clampDate(addDays(`${year}-01-01`, -DAYS_AROUND_YEAR));
  let gap: Gap | undefined;
  for (; date <= until; date = addDays(date, 1)) {
    const found = findMonthOn(almanac, date);
    if (found === 'untold') gap = { month: null, from: gap?.from ?? date, to: date };
    if (typeof found === 'string') continue;
    if (gap) yield gap;
    gap = undefined;
    yield found;
    if (found.month.year > year) return;
    date = found.to;
  }
  if (gap) yield gap;
}

/** The month of a date, unless the place left out the date, or its month cannot be told. */
function findMonthOn(almanac: Almanac, date: CivilDate): DatedMonth | 'left-out' | 'untold' {
  try {
    const [night] = almanac.nights(date, date);
    if (night === undefined) return 'left-out';
    const { month } = night;
    return { month, from: month.firstDate, to: almanac.nightsOfMonth(date).at(-1)?.date ?? date };
  } catch (error) {
    if (error instanceof NoNightError) return 'untold';
    throw error;
  }
}
