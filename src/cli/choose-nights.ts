import type { Almanac } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { FIRST_DATE, isCoveredDate, LAST_DATE } from '../content/civil-date.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { type DatedMonth, findMonthsOfYear } from '../pack/year-months.ts';
import type { Arguments } from './arguments.ts';
import { UsageError } from './usage-error.ts';

/** Dates from one to another, both included. */
export interface DateRange {
  readonly from: CivilDate;
  readonly to: CivilDate;
}

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
  if (/^\d{4}$/.test(text) && year >= FIRST_YEAR && year <= LAST_YEAR) return year;
  throw new UsageError(
    `\`--year ${text}\` is not a year of the calendar; expected one from ${FIRST_YEAR} to ${LAST_YEAR}, as YYYY`,
  );
}

/**
 * The dates of a year, or of one of its months; a name that comes twice in the year gives both.
 * @param month A name or a number of a month.
 * @throws UsageError for a month that the year does not have, and a year that is not wholly covered.
 */
export function requireRanges(almanac: Almanac, year: number, month: string | undefined): readonly DateRange[] {
  const months = findMonthsOfYear(almanac, year);
  const [first] = months ?? [];
  const last = months?.at(-1);
  if (months === undefined || first === undefined || last === undefined) {
    throw new UsageError(
      `\`--year ${year}\` does not lie whole within ${FIRST_DATE} to ${LAST_DATE}; write \`--from DATE --to DATE\` for a part of it`,
    );
  }
  if (month === undefined) return [{ from: first.from, to: last.to }];
  const found = findMonths(months, month);
  if (found.length > 0) return found;
  throw new UsageError(
    `\`--month ${month}\` does not come in the year ${year}; ${adviseMonth(almanac, months, month)}`,
  );
}

/** By name as written, else by name whatever its capitals, else by number. */
function findMonths(months: readonly DatedMonth[], asked: string): readonly DatedMonth[] {
  const name = asked.normalize('NFC');
  const fold = (text: string) => text.toLowerCase();
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

function adviseMonth({ rules }: Almanac, months: readonly DatedMonth[], asked: string): string {
  const names = months.map(({ month }) => month.name);
  const extra = rules.thirteenthMonth?.name;
  if (extra !== undefined && extra.toLowerCase() === asked.normalize('NFC').toLowerCase()) {
    return `\`${extra}\` is the month of long years, and this one has ${months.length} months`;
  }
  const near = findNearMiss(asked, names);
  return near === undefined
    ? `expected a number from 1 to ${months.length}, or one of ${names.join(', ')}`
    : `did you mean \`${near}\`?`;
}
