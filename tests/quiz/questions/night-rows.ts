import { readFileSync } from 'node:fs';
import { parse as parseYaml } from 'yaml';
import { createAlmanac } from '../../../src/calendar/almanac.ts';
import type { Almanac, NightRecord } from '../../../src/calendar/almanac-types.ts';
import type { CivilDate, Place } from '../../../src/calendar/rules.ts';
import { parseCalendar } from '../../../src/content/parse-calendar.ts';
import type { Calendar } from '../../../src/content/types.ts';

/*
 * The second path to the answers about nights: the plain list of nights, date after date, and the calendar's file as it is
 * written. It shares no code with the kinds of question, and finds dates and names in the words that a learner reads.
 */

/** A school's calendar, with its groups as the file has them. */
export interface Tradition {
  readonly calendar: Calendar;
  readonly almanac: Almanac;
  readonly groups: readonly { readonly name: string; readonly nights: readonly string[] }[];
}

/** @param path From the root of the project. */
export function openTradition(path: string, place: Place): Tradition {
  const text = readFileSync(new URL(`../../../${path}`, import.meta.url), 'utf8');
  const { value, diagnostics } = parseCalendar({ path, text });
  if (value === undefined) throw new Error(`${path} is faulty: ${JSON.stringify(diagnostics)}`);
  const written: { groups: { name: string; nights: { name: string }[] }[] } = parseYaml(text);
  const groups = written.groups.map(({ name, nights }) => ({ name, nights: nights.map((night) => night.name) }));
  return { calendar: value, almanac: createAlmanac(value, place), groups };
}

/** What is kept of a night. */
export interface Row {
  readonly date: CivilDate;
  readonly name: string;
  readonly month: string;
  readonly monthNumber: number;
  readonly year: number;
  readonly firstDate: CivilDate;
}

/** The nights of a long time in order, read as far as they are asked for. */
export class NightRows {
  readonly rows: Row[] = [];
  readonly #places = new Map<CivilDate, number>();
  readonly #source: Iterator<NightRecord>;

  constructor(almanac: Almanac, from: CivilDate, to: CivilDate) {
    this.#source = almanac.nights(from, to);
  }

  /** Reads on to a date. */
  readTo(date: CivilDate): void {
    while ((this.rows.at(-1)?.date ?? '') < date) {
      const { value, done } = this.#source.next();
      if (done) return;
      const { night, month } = value;
      this.#places.set(value.date, this.rows.length);
      this.rows.push({
        date: value.date,
        name: night.name,
        month: month.name,
        monthNumber: month.number,
        year: month.year,
        firstDate: month.firstDate,
      });
    }
  }

  /** The place of a date's night in the list. */
  placeOf(date: CivilDate): number {
    const place = this.#places.get(date);
    if (place === undefined) throw new Error(`The night of ${date} was not read.`);
    return place;
  }

  on(date: CivilDate): Row {
    return this.at(this.placeOf(date));
  }

  at(place: number): Row {
    const row = this.rows[place];
    if (row === undefined) throw new Error(`Night ${place} was not read.`);
    return row;
  }

  /** The nights of the month that holds a date. */
  monthOn(date: CivilDate): Row[] {
    const place = this.placeOf(date);
    const { firstDate } = this.at(place);
    return this.rows.slice(Math.max(place - 40, 0), place + 40).filter((row) => row.firstDate === firstDate);
  }
}

const WEEKDAYS = ['Thursday', 'Friday', 'Saturday', 'Sunday', 'Monday', 'Tuesday', 'Wednesday'];
const MONTHS = [
  ...['January', 'February', 'March', 'April', 'May', 'June'],
  ...['July', 'August', 'September', 'October', 'November', 'December'],
];

/** A date as English pages say it, without its year. */
export function sayDay(date: CivilDate): string {
  const [, month, day] = date.split('-').map(Number);
  // 1970-01-01, day 0, was a Thursday.
  const days = Math.round(Date.parse(`${date}T00:00:00Z`) / 86_400_000);
  return `${WEEKDAYS[((days % 7) + 7) % 7]} ${day} ${MONTHS[(month ?? 1) - 1]}`;
}

/** The date of words such as `Sunday 14 June 2026`. */
export function readDate(words: string): CivilDate {
  const [, day = '', month = '', year = ''] = /^\w+ (\d+) (\w+) (\d{4})$/.exec(words) ?? [];
  const number = MONTHS.indexOf(month) + 1;
  return `${year}-${String(number).padStart(2, '0')}-${day.padStart(2, '0')}`;
}
