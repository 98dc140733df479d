import { expect } from 'vitest';
import type { CivilDate } from '../../../src/calendar/rules.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import type { QuestionInstance } from '../../../src/quiz/questions/question-instance.ts';
import type { ComputedKind } from '../../../src/quiz/questions/question-kinds.ts';
import { type NightRows, type Row, readDate, sayDay, type Tradition } from './night-rows.ts';
import { readAnswer, readPrompt } from './read-question.ts';

/** A question with what its answer is held against. */
interface Checked {
  readonly prompt: string;
  readonly answer: string;
  /** Texts of each set of wrong options. */
  readonly sets: readonly (readonly string[])[];
  readonly facts: QuizFacts;
  readonly rows: NightRows;
  readonly groups: Tradition['groups'];
}

/** The questions about nights, groups, months and the year. */
export type NightKind = Extract<
  ComputedKind,
  | 'night-of-date'
  | 'date-of-night'
  | 'nights-until'
  | 'next-in-run'
  | 'before-in-run'
  | 'group-of-night'
  | 'beats-in-group'
  | 'order-nights'
  | 'odd-one-out'
  | 'month-of-date'
  | 'months-in-year'
  | 'finish-sentence'
>;

/** Holds one question's answer against the rows and the calendar's file, by the words that a learner reads. */
export function checkByRows(
  kind: NightKind,
  instance: QuestionInstance,
  sets: readonly (readonly string[])[],
  source: Pick<Checked, 'facts' | 'rows' | 'groups'>,
): void {
  CHECKS[kind]({ prompt: readPrompt(instance), answer: readAnswer(instance), sets, ...source });
}

const CHECKS: Readonly<Record<NightKind, (checked: Checked) => void>> = {
  'night-of-date': ({ prompt, answer, facts, rows }) => {
    expect(answer, prompt).toBe(rows.on(findDate(prompt, facts)).name);
  },
  'date-of-night': ({ prompt, answer, facts, rows }) => {
    const [, month = '', night = ''] = match(
      prompt,
      /^In (.+), (?:on )?which date (?:does|is) (.+?)(?: begin at \w+)?\?$/,
    );
    const from = rows.placeOf(facts.from);
    const near = rows.rows.slice(Math.max(from - 60, 0), rows.placeOf(facts.to) + 60);
    const found = near.filter((row) => row.name === night && row.month === month);
    expect(
      found.map(({ date }) => sayDay(date)),
      prompt,
    ).toEqual([answer]);
  },
  'nights-until': ({ prompt, answer, facts, rows }) => {
    const [, tonight = '', night = ''] = match(prompt, /^Tonight is (.+)\. How many nights until (.+)\?$/);
    const start = rows.placeOf(facts.today);
    expect(tonight, prompt).toBe(rows.at(start).name);
    const names = rows.rows.slice(start + 1, start + 40).map(({ name }) => name);
    expect(answer, prompt).toBe(String(names.indexOf(night) + 1));
  },
  'next-in-run': (checked) => checkStep(checked, 1),
  'before-in-run': (checked) => checkStep(checked, -1),
  'group-of-night': ({ prompt, answer, facts, rows, groups }) => {
    const byDate = prompt.startsWith('Which group does the night of ');
    const name = byDate
      ? rows.on(findDate(prompt, facts)).name
      : match(prompt, /^Which group does (.+) belong to\?$/)[1];
    expect(answer, prompt).toBe(findGroup(groups, name ?? ''));
  },
  'beats-in-group': ({ prompt, answer, facts, rows, groups }) => {
    const listed = /^Each name of (.+) is said on one beat\. How many beats are there\?$/.exec(prompt)?.[1];
    if (listed !== undefined) {
      expect(answer, prompt).toBe(String(groups.find(({ name }) => name === listed)?.nights.length));
      return;
    }
    const [, month = '', group = ''] = match(prompt, /^How many nights of (.+) belong to (.+)\?$/);
    const nights = findMonth(rows, facts, month).filter(({ name }) => findGroup(groups, name) === group);
    expect(answer, prompt).toBe(String(nights.length));
  },
  'order-nights': ({ prompt, answer, facts, rows }) => {
    const month = /^Put these nights in the order in which they come in (.+)\.$/.exec(prompt)?.[1];
    const start = month === undefined ? rows.placeOf(findDate(prompt, facts)) : 0;
    const nights = month === undefined ? rows.rows.slice(start, start + 12) : findMonth(rows, facts, month);
    const asked = new Set(answer.split(', '));
    // Taken out of the nights as they come, the names are the answer, and none comes twice.
    const taken = nights.map(({ name }) => name).filter((name) => asked.has(name));
    expect((month === undefined ? [...new Set(taken)] : taken).join(', '), prompt).toBe(answer);
  },
  'odd-one-out': ({ prompt, answer, sets, groups }) => {
    for (const set of sets) {
      const shared = new Set(set.map((name) => findGroup(groups, name)));
      expect([set.length, shared.size], prompt).toEqual([3, 1]);
      expect(shared, prompt).not.toContain(findGroup(groups, answer));
    }
  },
  'month-of-date': ({ prompt, answer, facts, rows }) => {
    expect(answer, prompt).toBe(rows.on(findDate(prompt, facts)).month);
  },
  // The years around lie years away: they are collected and counted when the century is read.
  'months-in-year': () => {},
  'finish-sentence': ({ prompt, answer, facts, rows }) => {
    const { name, month } = rows.on(findDate(prompt, facts));
    const gaps = facts.calendar.sentence.indexOf('{month}') < facts.calendar.sentence.indexOf('{night}');
    expect(answer, prompt).toBe(
      gaps && facts.calendar.sentence.includes('{month}') ? `${month} … ${name}` : `${name} … ${month}`,
    );
  },
};

function match(text: string, pattern: RegExp): RegExpExecArray {
  const found = pattern.exec(text);
  if (found === null) throw new Error(`"${text}" is worded otherwise.`);
  return found;
}

/** The date that a prompt says, among those asked about. */
function findDate(prompt: string, { from, to, today }: QuizFacts): CivilDate {
  const dates: CivilDate[] = [];
  for (let ms = Date.parse(`${from}T00:00:00Z`); ms <= Date.parse(`${to}T00:00:00Z`); ms += 86_400_000) {
    const date = new Date(ms).toISOString().slice(0, 10);
    if (prompt.includes(sayDay(date))) dates.push(date);
  }
  const [date] = dates;
  if (date === undefined || dates.length > 1) throw new Error(`"${prompt}" names ${dates.length} dates.`);
  expect(prompt.includes(date.slice(0, 4)), prompt).toBe(date.slice(0, 4) !== today.slice(0, 4));
  return date;
}

/** The nights of a month by its name, among those that the dates asked about lie in. */
function findMonth(rows: NightRows, { from, to, today }: QuizFacts, name: string): Row[] {
  const found = [from, to, today].find((date) => rows.on(date).month === name);
  if (found === undefined) throw new Error(`No date asked about lies in ${name}.`);
  return rows.monthOn(found);
}

function findGroup(groups: Tradition['groups'], night: string): string | undefined {
  return groups.find(({ nights }) => nights.includes(night))?.name;
}

/** The night beside the only one of its name in its month. */
function checkStep({ prompt, answer, facts, rows }: Checked, step: 1 | -1): void {
  const edge = /^(.+) is the (last|first) night of (.+?)\. Which night comes /.exec(prompt);
  // A name may have "in" in it, so the last one is that of the month.
  const inside =
    /^Which night comes (?:next after|just before) (.+) (this month)\?$/.exec(prompt) ??
    /^Which night comes (?:next after|just before) (.+) in (.+?)\?$/.exec(prompt);
  const name = edge?.[1] ?? inside?.[1] ?? '';
  const monthName = edge?.[3] ?? inside?.[2] ?? '';
  const nights = monthName === 'this month' ? rows.monthOn(facts.today) : findMonth(rows, facts, monthName);
  const found = nights.filter((row) => row.name === name);
  expect(found.length, prompt).toBe(1);
  const place = rows.placeOf(found[0]?.date ?? '');
  if (edge) expect(found[0], prompt).toBe(nights.at(step === 1 ? -1 : 0));
  expect(answer, prompt).toBe(rows.at(place + step).name);
}

/** The date on which a year begins, and how many months it is said to have. */
export function readYear(instance: QuestionInstance): { readonly firstDate: CivilDate; readonly months: string } {
  const prompt = readPrompt(instance);
  const pattern = /(?:that begins on|calendar begins on|first month of a year begins on) (\w+ \d+ \w+ \d{4})/;
  return { firstDate: readDate(match(prompt, pattern)[1] ?? ''), months: readAnswer(instance) };
}
