import type { CivilDate } from './rules.ts';

/** A civil date counted in whole days from 1970-01-01, which is 0; earlier dates are negative. */
export type DayNumber = number;

/** Milliseconds in 24 hours. */
export const MS_PER_DAY = 86_400_000;

/** Year, month 1 to 12 and day 1 to 31 of a date. */
interface DateParts {
  readonly year: number;
  readonly month: number;
  readonly day: number;
}

/** Days before each month of a common year, and the days of the whole year at the end. */
const DAYS_BEFORE_MONTH = [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334, 365] as const;

function isLeapYear(year: number): boolean {
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
}

/** Days from 1970-01-01 to 1 January of a year, by counting the leap days between. */
function computeYearStart(year: number): DayNumber {
  const leapDaysBefore = (before: number) =>
    Math.floor((before - 1) / 4) - Math.floor((before - 1) / 100) + Math.floor((before - 1) / 400);
  return 365 * (year - 1970) + leapDaysBefore(year) - leapDaysBefore(1970);
}

/** Days of a year that lie before the first of `month`; month 13 gives the length of the year. */
function computeDaysBeforeMonth(year: number, month: number): number {
  const days = DAYS_BEFORE_MONTH[month - 1];
  if (days === undefined) throw new RangeError(`Unexpected month ${month}, expected 1 to 13.`);
  return month > 2 && isLeapYear(year) ? days + 1 : days;
}

/**
 * The day number of a date of the proleptic Gregorian calendar.
 * @param year Any whole year.
 * @param month 1 to 12.
 * @param day Day of the month; one past the end of the month gives the first of the next.
 */
export function dayNumberOf(year: number, month: number, day: number): DayNumber {
  return computeYearStart(year) + computeDaysBeforeMonth(year, month) + day - 1;
}

/** The year, month and day of a day number, in the proleptic Gregorian calendar. */
export function computeDateParts(dayNumber: DayNumber): DateParts {
  let year = 1970 + Math.floor(dayNumber / 365.2425);
  // The mean year can miss by one at the turn of the year.
  if (dayNumber < computeYearStart(year)) year -= 1;
  else if (dayNumber >= computeYearStart(year + 1)) year += 1;
  const dayOfYear = dayNumber - computeYearStart(year);
  let month = Math.min(12, 1 + Math.floor(dayOfYear / 29));
  while (computeDaysBeforeMonth(year, month) > dayOfYear) month -= 1;
  return { year, month, day: dayOfYear - computeDaysBeforeMonth(year, month) + 1 };
}

/** Prints a whole number with leading zeros. */
export function renderDigits(value: number, width: number): string {
  return String(value).padStart(width, '0');
}

/** `YYYY-MM-DD` of a day number; years 0 to 9999. */
export function renderCivilDate(dayNumber: DayNumber): CivilDate {
  const { year, month, day } = computeDateParts(dayNumber);
  return `${renderDigits(year, 4)}-${renderDigits(month, 2)}-${renderDigits(day, 2)}`;
}

/**
 * Reads a date, strictly `YYYY-MM-DD`.
 * @throws RangeError for any other spelling and for dates that no calendar has, such as 2025-02-30.
 */
export function parseCivilDate(text: string): DayNumber {
  const found = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (found) {
    const month = Number(found[2]);
    if (month >= 1 && month <= 12) {
      const dayNumber = dayNumberOf(Number(found[1]), month, Number(found[3]));
      if (renderCivilDate(dayNumber) === text) return dayNumber;
    }
  }
  throw new RangeError(`Unexpected date \`${text}\`, expected a real calendar date, use \`YYYY-MM-DD\`.`);
}
