import { describe, expect, it } from 'vitest';
import type { CivilDate, Place } from '../../../src/calendar/rules.ts';
import { addDays } from '../../../src/content/civil-date.ts';
import { createLabels } from '../../../src/content/labels.ts';
import { foldText, readText } from '../../../src/quiz/fold-text.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import type { QuestionInstance } from '../../../src/quiz/questions/question-instance.ts';
import { QUESTION_KINDS } from '../../../src/quiz/questions/question-kinds.ts';
import { createRandom, pick, type Random } from '../../../src/quiz/random.ts';
import { checkByRows, type NightKind, readYear } from './check-by-rows.ts';
import { makeNights } from './fake-nights.ts';
import { NightRows, openTradition, type Tradition } from './night-rows.ts';
import { readAnswer, readPrompt } from './read-question.ts';

/*
 * Every answer about nights, by a second path (see night-rows.ts), over 2,001 weeks drawn from 1950 to 2050: three
 * calendars, that begin with the conjunction, the full Moon and by anchors with names left out and said twice, at sunset
 * and at sunrise, in both hemispheres. FC_SEED draws other weeks.
 */
const WEEKS_EACH = 667;
const SEED = process.env['FC_SEED'] ?? '20260727';
const DAYS_OF_CENTURY = 36_524;

const KINDS: readonly NightKind[] = [
  ...(['night-of-date', 'date-of-night', 'nights-until', 'next-in-run', 'before-in-run', 'group-of-night'] as const),
  ...(['beats-in-group', 'order-nights', 'odd-one-out', 'month-of-date', 'months-in-year', 'finish-sentence'] as const),
];

/** Questions of each kind and week that are looked at; and how long that may take where the machine is busy. */
const SAMPLES = 2;
const TIMEOUT_MS = 180_000;

function placeAt(latitudeDegrees: number, longitudeDegrees: number, timeZone: string): Place {
  return { latitudeDegrees, longitudeDegrees, elevationMetres: 10, timeZone };
}

const TRADITIONS: readonly (readonly [path: string, place: Place])[] = [
  ['content/calendars/estuary.yaml', placeAt(-41.1, 174.2, 'Pacific/Auckland')],
  ['content/calendars/moulin.yaml', placeAt(48.2, 5.1, 'Europe/Paris')],
  ['tests/fixtures/three-schools/content/calendars/southern-sunset.yaml', placeAt(-51.7, -58.4, 'Atlantic/Stanley')],
];

const USUAL = makeNights();

/** A week with its lesson on one of its days; the dates asked about are as those of a quiz that does not say. */
function makeWeek({ almanac, calendar }: Tradition, today: CivilDate, random: Random): QuizFacts {
  const from = addDays(today, -random.below(5));
  return { ...USUAL, almanac, calendar, labels: createLabels('en'), today, from, to: addDays(today, 7) };
}

function listDates(random: Random): CivilDate[] {
  const days = Array.from({ length: WEEKS_EACH }, () => random.below(DAYS_OF_CENTURY));
  // In order, so that what the almanac keeps of one week serves the next.
  return days.sort((one, other) => one - other).map((day) => addDays('1950-01-01', day));
}

/** Checks that go for every choice: one right option, none that reads like another. */
function readOptions(instance: QuestionInstance): string[][] {
  if (instance.kind !== 'choice') return [];
  const sets = instance.listWrongSets().map((set) => set.map(({ content }) => readText(content)));
  expect(sets.length).toBeGreaterThan(0);
  for (const set of sets) {
    const options = [readAnswer(instance), ...set].map(foldText);
    expect([set.length, new Set(options).size], readPrompt(instance)).toEqual([3, 4]);
  }
  return sets;
}

describe.each(TRADITIONS)('answers of %s', (path, place) => {
  it(`are true in ${WEEKS_EACH} weeks`, { timeout: TIMEOUT_MS }, () => {
    const tradition = openTradition(path, place);
    const random = createRandom(`${SEED}\n${path}`);
    const rows = new NightRows(tradition.almanac, '1945-06-01', '2055-06-01');
    const years = new Map<CivilDate, Set<string>>();
    const asked = new Map<NightKind, number>();
    for (const today of listDates(random)) {
      const facts = makeWeek(tradition, today, random);
      rows.readTo(addDays(today, 75));
      for (const kind of KINDS) {
        const instances = QUESTION_KINDS[kind].list(facts);
        for (let sample = 0; sample < Math.min(SAMPLES, instances.length); sample++) {
          const instance = pick(instances, random);
          checkByRows(kind, instance, readOptions(instance), { facts, rows, groups: tradition.groups });
          asked.set(kind, (asked.get(kind) ?? 0) + 1);
          if (kind !== 'months-in-year') continue;
          const { firstDate, months } = readYear(instance);
          years.set(firstDate, (years.get(firstDate) ?? new Set<string>()).add(months));
        }
      }
    }
    rows.readTo('2055-06-01');
    for (const [firstDate, said] of years) {
      const { year, monthNumber, date } = rows.on(firstDate);
      const place = rows.placeOf(firstDate);
      const months = new Set(
        rows.rows.slice(place, place + 400).flatMap((row) => (row.year === year ? row.firstDate : [])),
      );
      expect([monthNumber, date, [...said]]).toEqual([1, firstDate, [String(months.size)]]);
    }
    for (const kind of KINDS) expect(asked.get(kind), kind).toBeGreaterThan(WEEKS_EACH);
  });
});
