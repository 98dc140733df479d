import { Temporal } from 'temporal-polyfill';
import type { Almanac, MonthRecord, NightRecord, RunNight } from '../../src/calendar/almanac-types.ts';
import type { CalendarRules, DayBegins } from '../../src/calendar/rules.ts';
import type { Calendar } from '../../src/content/types.ts';

const DAY_MS = 86_400_000;

/** Names that stand for any calendar's. */
export const THIRTY_NAMES: readonly string[] = Array.from(
  { length: 30 },
  (_, place) => `Moon ${'abcdefghijklmnopqrstuvwxyzåäöø'.charAt(place)}`,
);

export interface FakeSky {
  /** All names of the calendar, in order. */
  readonly names?: readonly string[];
  /** The names that each month says, night by night; left-out and repeated names as the test wants them. */
  readonly months?: readonly (readonly string[])[];
  readonly firstDate?: string;
  readonly dayBegins?: DayBegins;
}

/** A calendar of the given names with a month list that says which night is which; nothing is computed from a sky. */
export function fakeSky({
  names = THIRTY_NAMES,
  months = [29, 30, 29].map((length) => names.slice(0, length)),
  firstDate = '2026-07-14',
  dayBegins = 'sunset',
}: FakeSky = {}): { almanac: Almanac; calendar: Calendar } {
  if (new Set(names).size !== names.length || names.length === 0) throw new Error('The names must differ.');
  if (months.some((month) => month.length === 0)) throw new Error('A month needs a night.');
  const calendar = fakeCalendar(names, dayBegins);
  const run = names.map((name, place): RunNight => {
    return { name, number: place + 1, group: 'All', groupNumber: 1, numberInGroup: place + 1 };
  });
  const records = listRecords(run, months, Temporal.PlainDate.from(firstDate), dayBegins);
  return { almanac: fakeAlmanac(calendar, run, records), calendar };
}

function fakeCalendar(names: readonly string[], dayBegins: DayBegins): Calendar {
  return {
    id: 'fake',
    title: 'Fake nights',
    language: 'x-fake',
    keeper: 'the tests',
    sharing: 'open',
    sentence: 'Tonight is {night}, in {month}.',
    spokenNames: new Map(),
    dayBegins,
    monthBegins: { at: 'conjunction', offset: 0 },
    groups: [{ name: 'All', nights: names.map((name) => ({ name })) }],
    months: Array.from({ length: 12 }, (_, place) => ({ name: `Month ${place + 1}` })),
    yearBegins: { phase: 'new-moon', onOrAfter: { kind: 'solstice', month: 'june' } },
    observations: [],
    announcedMonths: [],
  };
}

function listRecords(
  run: readonly RunNight[],
  months: readonly (readonly string[])[],
  first: Temporal.PlainDate,
  beginsWith: DayBegins,
): NightRecord[] {
  const records: NightRecord[] = [];
  for (const [place, said] of months.entries()) {
    const firstDate = first.add({ days: records.length }).toString();
    const month: MonthRecord = {
      name: `Month ${place + 1}`,
      number: place + 1,
      year: 2026,
      firstDate,
      length: said.length,
      intercalary: false,
    };
    for (const [index, name] of said.entries()) {
      const night = run.find((candidate) => candidate.name === name);
      if (night === undefined) throw new Error(`The calendar has no night ${name}.`);
      const beginsMs = records.length * DAY_MS;
      records.push({
        date: first.add({ days: records.length }).toString(),
        beginsMs,
        endsMs: beginsMs + DAY_MS,
        beginsWith,
        night,
        repeat: said.indexOf(name) < index,
        nightOfMonth: index + 1,
        month,
        basis: 'computed',
      });
    }
  }
  return records;
}

function fakeAlmanac(rules: CalendarRules, run: readonly RunNight[], records: readonly NightRecord[]): Almanac {
  const nightOn = (date: string) => {
    const record = records.find((candidate) => candidate.date === date);
    if (record === undefined) throw new RangeError(`The fake sky has no night for ${date}.`);
    return record;
  };
  const hidden = (): never => {
    throw new Error('The fake sky shows nothing.');
  };
  return {
    rules,
    place: { latitudeDegrees: -41.1, longitudeDegrees: 174.2, elevationMetres: 10, timeZone: 'Pacific/Auckland' },
    run,
    nightOn,
    nightAt: (instantMs) => {
      const record = records.find(({ beginsMs, endsMs }) => instantMs >= beginsMs && instantMs < endsMs);
      if (record === undefined) throw new RangeError(`The fake sky has no night at ${instantMs}.`);
      return record;
    },
    *nights(from, to) {
      for (const record of records) if (record.date >= from && record.date <= to) yield record;
    },
    nightsOfMonth: (date) => {
      const { month } = nightOn(date);
      return records.filter((record) => record.month === month);
    },
    explain: hidden,
    skyOf: hidden,
    moonBestSeen: hidden,
    moonHighest: hidden,
  };
}
