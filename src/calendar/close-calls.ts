import type { DayNumber } from './day-number.ts';
import type { Doubt } from './doubt-types.ts';
import { type CloseCall, type CloseReason, isOfYear, type OtherNight } from './explanation.ts';
import type { MonthSpan } from './month-span.ts';
import type { Months } from './months.ts';
import { NoNightError } from './no-night-error.ts';

/** The month of a date; null where the calendar, had it fallen otherwise, could not tell. */
function findMonth(months: Months, day: DayNumber): MonthSpan | null {
  try {
    return months.monthOf(day);
  } catch (error) {
    if (error instanceof NoNightError) return null;
    throw error;
  }
}

function describeNight({ names, days, record }: MonthSpan, day: DayNumber): OtherNight {
  const index = days.indexOf(day);
  const { name, number, year, length } = record;
  return {
    night: names[index]?.night.name ?? '',
    nightOfMonth: index + 1,
    month: { name, number, year, length },
  };
}

/** Whether the month would be another, be it by its name, its place in the year, or its year. */
function isAnotherMonth({ month: one }: OtherNight, { month: other }: OtherNight): boolean {
  return one.name !== other.name || one.number !== other.number || one.year !== other.year;
}

/** Whether the date would be another night. The length of its month tells only on the month's last night. */
function isAnotherNight(one: OtherNight, other: OtherNight): boolean {
  const isLast = ({ nightOfMonth, month: { length } }: OtherNight) => nightOfMonth === length;
  return (
    one.night !== other.night ||
    one.nightOfMonth !== other.nightOfMonth ||
    isLast(one) !== isLast(other) ||
    isAnotherMonth(one, other)
  );
}

/**
 * The calls that were close on the way to a night: those to check by eye, or to ask the keeper about. Each doubt about
 * the night's month is turned the other way, and the calendar worked out with it: the call counts for the nights that
 * would then have another name, another place in their month, or another month, and for the last night before a month
 * that might begin sooner or later. So the beginning of a year, where it is truly in doubt, counts for every night whose
 * month hangs on it, which may be a year of them.
 * @param doubts Those about the month.
 * @param day A date of the month.
 */
export function listCloseCalls(doubts: readonly Doubt[], month: MonthSpan, day: DayNumber): readonly CloseCall[] {
  const here = describeNight(month, day);
  return doubts.flatMap(({ reasons, other }) => {
    const span = findMonth(other, day);
    const otherwise = span === null ? null : describeNight(span, day);
    const decides = (reason: CloseReason) =>
      otherwise === null || (isOfYear(reason) ? isAnotherMonth : isAnotherNight)(here, otherwise);
    return reasons.filter(decides).map((reason) => ({ ...reason, otherwise }));
  });
}
