import type { Almanac } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { FIRST_DATE, isCoveredDate, LAST_DATE } from '../content/civil-date.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { type DatedMonth, type DateRange, findMonthsOfYear, type YearMonths } from '../pack/year-months.ts';
import type { Arguments } from './arguments.ts';
import { UsageError } from './usage-error.ts';

/** Which nights a call asks for, as far as its words tell; months and years are found by `requireRanges`. */
export type NightChoice =
  | { readonly kind: 'range'; readonly range: DateRange }
  | { readonly kind: 'year'; readonly year: number; readonly month?: string }
  | { readonly kind: 'explain'; readonly date: CivilDate };

const FIRST_YEAR = Number(FIRST_DATE.slice(0, 4));
const LAST_YEAR = Number(LAST_DATE.slice(0, 4));

/**
 * Reads which nights a call asks for.
 * @throws UsageError for options that do not go together, and for dates and years that are none.
 */
export function chooseNights({ options }: Arguments): NightChoice {
  requireOneWay(options);
  if (options.explain !== undefined) return { kind: 'explain', date: requireDate('explain', options.explain) };
  if (options.year !== undefined) {
    const year = requireYear(options.year);
    return options.month === undefined ? { kind: 'year', year } : { kind: 'year', year, month: options.month };
  }
  if (options.month !== undefined) {
    throw new UsageError(
      `\`--month ${options.month}\` stands without its year; add \`--year YYYY\`, the calendar’s year`,
    );
  }
  const from = requireDate('from', options.from);
  const to = options.to === undefined ? from : requireDate('to', options.to);
  if (to < from)
    throw new UsageError(`\`--to ${to}\` is before \`--from ${from}\`; expected the same date or a later one`);
  return { kind: 'range', range: { from, to } };
}

/** `--from` with `--to`, `--year` with or without `--month`, and `--explain` are three ways; a call takes one. */
function requireOneWay(options: Arguments['options']): void {
  const ways = [['explain'], ['year', 'month'], ['from', 'to']] as const;
  const given = ways.flatMap((names) => names.find((name) => options[name] !== undefined) ?? []);
  const [first, second] = given;
  if (first === undefined || second === undefined) return;
  throw new UsageError(`\`--${first}\` and \`--${second}\` are two ways to say which nights; keep one of them`);
}

function requireDate(option: 'from' | 'to' | 'explain', text: string | undefined): CivilDate {
  if (text === undefined) {
    throw new UsageError(
      '`nights` needs a date; write `--from YYYY-MM-DD`, and `--to YYYY-MM-DD` for more than one, or `--year YYYY`',
    );
  }
  if (isCoveredDate(text)) return text;
  throw new UsageError(
    `\`--${option} ${text}\` is not a date of the calendar; expected a real date from ${FIRST_DATE} to ${LAST_DATE}, as YYYY-MM-DD`,
  );
}

function requireYear(text: string): number {
  const year = Number(text);
  // A year may begin in the civil year before its number, or end in the one after.
  if (/^\d{4}$/.test(text) && year >= FIRST_YEAR - 1 && year <= LAST_YEAR + 1) return year;
  throw new UsageError(
    `\`--year ${text}\` is not a year of the calendar; expected one from ${FIRST_YEAR} to ${LAST_YEAR}, as YYYY`,
  );
}

/**
 * The dates of a year, or of one of its months; a name that comes twice in the year gives both. Where months of the year
 * cannot be told, their dates are among them, for whoever lists nights to come upon.
 * @param month A name or a number of a month.
 * @throws UsageError for a month that the year does not have, and a year or month that is not wholly covered.
 */
export function requireRanges(almanac: Almanac, year: number, month: string | undefined): readonly DateRange[] {
  const found = findMonthsOfYear(almanac, year);
  if (month !== undefined) return requireMonth(almanac, year, month, found);
  const dates = [...found.months, ...found.gaps];
  const [from] = dates.map((each) => each.from).sort();
  const to = dates
    .map((each) => each.to)
    .sort()
    .at(-1);
  if (found.isWhole && from !== undefined && to !== undefined) return [{ from, to }];
  throw new UsageError(
    `\`--year ${year}\` does not lie whole within ${FIRST_DATE} to ${LAST_DATE}; write \`--from DATE --to DATE\` for a part of it`,
  );
}

function requireMonth(almanac: Almanac, year: number, asked: string, found: YearMonths): readonly DateRange[] {
  const { months, gaps, isWhole } = found;
  const ranges = findMonths(months, asked);
  if (ranges.length > 0) return ranges;
  const isKnown = isKnownMonth(almanac, asked);
  if (isKnown && gaps.length > 0) return gaps;
  if (isKnown && !isWhole) {
    throw new UsageError(
      `\`--month ${asked}\` of the year ${year} does not lie whole within ${FIRST_DATE} to ${LAST_DATE}; write \`--from DATE --to DATE\` for a part of it`,
    );
  }
  throw new UsageError(`\`--month ${asked}\` does not come in the year ${year}; ${adviseMonth(almanac, found, asked)}`);
}

/** Whether a month is one of the calendar's, by its name or number, in whatever year. */
function isKnownMonth({ rules }: Almanac, asked: string): boolean {
  const named = rules.thirteenthMonth === undefined ? rules.months : [...rules.months, rules.thirteenthMonth];
  const isNamed = named.some(({ name }) => fold(name) === fold(asked));
  return isNamed || (/^\d{1,2}$/.test(asked) && Number(asked) >= 1 && Number(asked) <= MOST_MONTHS);
}

/** Months in a long year. */
const MOST_MONTHS = 13;

/** For comparing names whatever their capitals. */
function fold(text: string): string {
  return text.normalize('NFC').toLowerCase();
}

/** By name as written, else by name whatever its capitals, else by number. */
function findMonths(months: readonly DatedMonth[], asked: string): readonly DatedMonth[] {
  const name = asked.normalize('NFC');
  const ways: readonly ((each: DatedMonth) => boolean)[] = [
    ({ month }) => month.name === name,
    ({ month }) => fold(month.name) === fold(name),
    ({ month }) => /^\d{1,2}$/.test(name) && month.number === Number(name),
  ];
  for (const is of ways) {
    const found = months.filter(is);
    if (found.length > 0) return found;
  }
  return [];
}

function adviseMonth({ rules }: Almanac, { months, gaps, isWhole }: YearMonths, asked: string): string {
  const extra = rules.thirteenthMonth?.name;
  if (extra !== undefined && fold(extra) === fold(asked)) {
    return `\`${extra}\` is the month of long years, and this one has ${months.length} months`;
  }
  const isTold = isWhole && gaps.length === 0;
  const names = isTold ? months.map(({ month }) => month.name) : rules.months.map(({ name }) => name);
  const near = findNearMiss(asked, names);
  return near === undefined
    ? `expected a number from 1 to ${names.length}, or one of ${names.join(', ')}`
    : `did you mean \`${near}\`?`;
}
