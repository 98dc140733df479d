import type { Almanac, MonthRecord, NightRecord } from '../../calendar/almanac-types.ts';
import { MS_PER_DAY } from '../../calendar/day-number.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import { addDays } from '../../content/civil-date.ts';

/** One of the calendar's years. */
export interface MeasuredYear {
  /** The civil year in which its marker lies. */
  readonly year: number;
  /** 12 or 13. */
  readonly months: number;
  readonly nights: number;
  /** Nights before the last month begins. */
  readonly nightsBeforeLast: number;
  /** The first date of its first month, of its last month, and of the year after. */
  readonly firstDate: CivilDate;
  readonly lastMonthDate: CivilDate;
  readonly nextDate: CivilDate;
}

/** Days of a lunation in the mean; and how far into a month its middle is, which nothing that moves a month leaves. */
const MEAN_MONTH_DAYS = 29.530589;
const MIDDLE_DAYS = 14;

/** The years of an almanac that were measured, by their numbers: every quiz of a week asks for the same few. */
const measured = new WeakMap<Almanac, Map<number, MeasuredYear>>();

/**
 * The year that holds a date, measured by a few of its months alone: so a century away costs no more than this year.
 * @returns Nothing where a month that is needed cannot be told, or lies outside the years that the almanac covers.
 */
export function measureYear(almanac: Almanac, date: CivilDate): MeasuredYear | undefined {
  const month = findNight(almanac, date)?.month;
  return month && recallYear(almanac, month.year, () => computeYear(almanac, month));
}

/** The year after one that was measured, or the year before; nothing as for {@link measureYear}. */
export function measureNextYear(almanac: Almanac, { year, nextDate }: MeasuredYear): MeasuredYear | undefined {
  return recallYear(almanac, year + 1, () => measureYear(almanac, addDays(nextDate, MIDDLE_DAYS)));
}

export function measureYearBefore(almanac: Almanac, { year, firstDate }: MeasuredYear): MeasuredYear | undefined {
  return recallYear(almanac, year - 1, () => measureYear(almanac, addDays(firstDate, -MIDDLE_DAYS)));
}

function recallYear(almanac: Almanac, year: number, compute: () => MeasuredYear | undefined): MeasuredYear | undefined {
  const years = measured.get(almanac) ?? new Map<number, MeasuredYear>();
  measured.set(almanac, years);
  const found = years.get(year) ?? compute();
  if (found !== undefined) years.set(year, found);
  return found;
}

/** Looks at the months that hold the middle of the first, twelfth and thirteenth lunation from the year's beginning. */
function computeYear(almanac: Almanac, month: MonthRecord): MeasuredYear | undefined {
  const first = findMonthFrom(almanac, month.firstDate, 1 - month.number);
  if (first === undefined || first.month.number !== 1) return undefined;
  const { firstDate, year } = first.month;
  const [twelfth, thirteenth, fourteenth] = [11, 12, 13].map((count) => findMonthFrom(almanac, firstDate, count));
  const isLong = thirteenth?.month.year === year;
  const [last, next] = isLong ? [thirteenth, fourteenth] : [twelfth, thirteenth];
  if (last?.month.number !== (isLong ? 13 : 12) || next?.month.number !== 1) return undefined;
  const nextDate = next.month.firstDate;
  return {
    ...{ year, firstDate, nextDate, lastMonthDate: last.month.firstDate },
    months: last.month.number,
    nightsBeforeLast: countNights(almanac, firstDate, last.month.firstDate),
    nights: countNights(almanac, firstDate, nextDate),
  };
}

/** A night in the middle of the month so many months after another one, or before when negative. */
function findMonthFrom(almanac: Almanac, firstDate: CivilDate, months: number): NightRecord | undefined {
  return findNight(almanac, addDays(firstDate, Math.round(months * MEAN_MONTH_DAYS) + MIDDLE_DAYS));
}

/** The night of a date, or nothing where there is none to tell. */
function findNight(almanac: Almanac, date: CivilDate): NightRecord | undefined {
  try {
    return almanac.nights(date, date).next().value ?? undefined;
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** Nights differ from a day's length by minutes, and a year's add up to less than half a day. */
function countNights(almanac: Almanac, from: CivilDate, to: CivilDate): number {
  return Math.round((almanac.nightOn(to).beginsMs - almanac.nightOn(from).beginsMs) / MS_PER_DAY);
}
