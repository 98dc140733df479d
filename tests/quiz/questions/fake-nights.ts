import type { Almanac, MonthRecord, NightRecord, RunNight } from '../../../src/calendar/almanac-types.ts';
import { computeRun } from '../../../src/calendar/fit.ts';
import { NoNightError } from '../../../src/calendar/no-night-error.ts';
import type { CalendarRules, CivilDate, DayBegins, NamedMonth } from '../../../src/calendar/rules.ts';
import { addDays } from '../../../src/content/civil-date.ts';
import { createLabels, type Labels } from '../../../src/content/labels.ts';
import type { Calendar, School } from '../../../src/content/types.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';

const DAY_MS = 86_400_000;

/** A month as a test wants it: the numbers of the names it says, night by night. */
export interface FakeMonth {
  readonly said: readonly number[];
  readonly name?: string;
  readonly number?: number;
  readonly year?: number;
  readonly intercalary?: boolean;
}

export interface FakeNights {
  /** Groups with their names, in order; names and groups may be alike. */
  readonly groups?: readonly (readonly [group: string, names: readonly string[]])[];
  readonly months?: readonly FakeMonth[];
  readonly monthNames?: readonly string[];
  readonly thirteenthMonth?: NamedMonth & { readonly after: number };
  readonly firstDate?: CivilDate;
  readonly dayBegins?: DayBegins;
  readonly monthBegins?: CalendarRules['monthBegins'];
  readonly sentence?: string;
  readonly language?: string;
  readonly labels?: Labels;
  readonly today?: CivilDate;
  readonly from?: CivilDate;
  readonly to?: CivilDate;
  /** Dates whose night cannot be told. */
  readonly untold?: readonly CivilDate[];
}

/** Ten groups of three: `Ash a`, `Ash b`, `Ash c`, `Bay a` … */
export const GROUPS = ['Ash', 'Bay', 'Cob', 'Den', 'Elm', 'Fen', 'Gum', 'Hay', 'Ivy', 'Jay'].map(
  (group) => [group, ['a', 'b', 'c'].map((letter) => `${group} ${letter}`)] as const,
);

/** Numbers from one to another, both included. */
export function range(from: number, to: number): number[] {
  return Array.from({ length: Math.max(to - from + 1, 0) }, (_, index) => from + index);
}

const USUAL_MONTHS: readonly FakeMonth[] = [29, 30, 29].map((length) => ({ said: range(1, length) }));

/**
 * Facts of a calendar whose months say the names that the test wants; nothing is computed from a sky. Left out, it has
 * thirty names in ten groups and months of 29, 30 and 29 nights from 14 July 2026 on; tonight is night 16.
 */
export function makeNights(wanted: FakeNights = {}): QuizFacts {
  const { today = '2026-07-29', language = 'x-fake', dayBegins = 'sunset' } = wanted;
  const rules = makeRules(wanted, dayBegins);
  const run = computeRun(rules.groups);
  const records = listRecords(run, wanted, dayBegins);
  const calendar: Calendar = {
    ...rules,
    id: 'fake',
    title: 'Fake nights',
    language,
    keeper: 'the tests',
    sharing: 'open',
    sentence: wanted.sentence ?? 'Tonight is {night}, in {month}.',
    spokenNames: new Map(),
  };
  return {
    almanac: makeAlmanac(rules, run, records, new Set(wanted.untold)),
    calendar,
    gestures: { id: 'fake', title: 'No gestures', gestures: {}, recordings: {} },
    school: SCHOOL,
    labels: wanted.labels ?? createLabels('en'),
    today,
    from: wanted.from ?? '2026-07-27',
    to: wanted.to ?? addDays(today, 7),
    toldDates: new Set(),
  };
}

function makeRules(wanted: FakeNights, dayBegins: DayBegins): CalendarRules {
  const { groups = GROUPS, monthNames = range(1, 12).map((number) => `Month ${number}`), thirteenthMonth } = wanted;
  return {
    dayBegins,
    monthBegins: wanted.monthBegins ?? { at: 'conjunction', offset: 0 },
    groups: groups.map(([name, names]) => ({ name, nights: names.map((night) => ({ name: night })) })),
    months: monthNames.map((name) => ({ name })),
    yearBegins: { phase: 'new-moon', onOrAfter: { kind: 'solstice', month: 'june' } },
    ...(thirteenthMonth && { thirteenthMonth }),
    observations: [],
    announcedMonths: [],
  };
}

function listRecords(run: readonly RunNight[], wanted: FakeNights, beginsWith: DayBegins): NightRecord[] {
  const { months = USUAL_MONTHS, firstDate = '2026-07-14' } = wanted;
  const records: NightRecord[] = [];
  for (const [place, fake] of months.entries()) {
    const month: MonthRecord = {
      name: fake.name ?? wanted.monthNames?.[place] ?? `Month ${place + 1}`,
      number: fake.number ?? place + 1,
      year: fake.year ?? 2026,
      firstDate: addDays(firstDate, records.length),
      length: fake.said.length,
      intercalary: fake.intercalary ?? false,
    };
    for (const [index, number] of fake.said.entries()) {
      const night = run[number - 1];
      if (night === undefined) throw new Error(`The calendar has no night ${number}.`);
      records.push({
        date: addDays(firstDate, records.length),
        beginsMs: records.length * DAY_MS,
        endsMs: (records.length + 1) * DAY_MS,
        beginsWith,
        night,
        repeat: fake.said.indexOf(number) < index,
        nightOfMonth: index + 1,
        month,
        basis: 'computed',
      });
    }
  }
  return records;
}

function makeAlmanac(
  rules: CalendarRules,
  run: readonly RunNight[],
  records: readonly NightRecord[],
  untold: ReadonlySet<CivilDate>,
): Almanac {
  const requireNight = (record: NightRecord | undefined, what: string) => {
    if (record === undefined) throw new RangeError(`The fake nights have none for ${what}.`);
    if (untold.has(record.date)) throw new NoNightError(`The night of ${record.date} cannot be told.`);
    return record;
  };
  const nightOn = (date: CivilDate) =>
    requireNight(
      records.find((record) => record.date === date),
      date,
    );
  const hidden = (): never => {
    throw new Error('The fake nights show no sky.');
  };
  return {
    rules,
    place: SCHOOL.place,
    run,
    nightOn,
    nightAt: (instantMs) =>
      requireNight(
        records.find(({ beginsMs, endsMs }) => instantMs >= beginsMs && instantMs < endsMs),
        `${instantMs}`,
      ),
    *nights(from, to) {
      for (const record of records) if (record.date >= from && record.date <= to) yield requireNight(record, from);
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

const SCHOOL: School = {
  id: 'fake',
  name: 'The tests’ own school',
  language: 'en',
  place: { latitudeDegrees: -41.1, longitudeDegrees: 174.2, elevationMetres: 10, timeZone: 'Pacific/Auckland' },
  calendar: 'fake',
  gestures: 'fake',
  classBegins: '09:00',
  classEnds: '15:00',
  bedtime: '20:30',
  terms: [],
  groups: [],
  home: true,
};
