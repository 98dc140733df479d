import type { CalendarRules, NamedMonth } from './rules.ts';

/** The name a month of a year takes. */
interface FittedMonth {
  readonly month: NamedMonth;
  readonly intercalary: boolean;
}

/** Months in a common year; one more makes a long one. */
const COMMON_YEAR = 12;

/** The names of a long year in order, the thirteenth month put in where the rules have one. */
function listLongYear(rules: Pick<CalendarRules, 'months' | 'thirteenthMonth'>): readonly NamedMonth[] {
  const extra = rules.thirteenthMonth;
  if (!extra) return rules.months;
  return [...rules.months.slice(0, extra.after), extra, ...rules.months.slice(extra.after)];
}

/**
 * The name of a month by its place in the year. A common year takes the names in order. In a long year the thirteenth
 * month stands after month `after`; without one, a listed thirteenth name is used, or the last name is said twice.
 * Should a year ever have other than 12 or 13 months, a shorter one stops early and a longer one repeats its last name.
 * @param number Place in the year, 1 or more.
 * @param monthsInYear How many months the year has.
 */
export function computeMonthName(
  rules: Pick<CalendarRules, 'months' | 'thirteenthMonth'>,
  number: number,
  monthsInYear: number,
): FittedMonth {
  const names = monthsInYear > COMMON_YEAR ? listLongYear(rules) : rules.months;
  const month = names[Math.min(number, names.length) - 1];
  if (month === undefined) throw new RangeError(`Month ${number} of ${names.length} names has no name.`);
  const isExtra = rules.thirteenthMonth ? month === rules.thirteenthMonth : number > COMMON_YEAR;
  return { month, intercalary: isExtra || number > names.length };
}
