import { type Checked, checkDocument } from './check-value.ts';
import { addDays, computeMonday, computeWeekDay, isCoveredDate, LAST_DATE, WEEK_DAYS } from './civil-date.ts';
import type { Diagnostic } from './diagnostic.ts';
import {
  checkReference,
  checkUnique,
  collect,
  collectTexts,
  createFault,
  describeNearMiss,
  type MeaningCheck,
} from './faults.ts';
import { computeFolderId } from './file-id.ts';
import { isMap } from './is-map.ts';
import { RELIEF_CASES, type WrittenWeek, weekSchema } from './schemas/week.ts';
import type { ReliefCase, ReliefNote, School, SourceFile, Term, WeekDay, WeekPlan } from './types.ts';
import { describePath, quote } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** The schools a week may name. */
export interface SchoolLookup {
  /** Ids of all school files there are, faulty ones too. */
  readonly ids: readonly string[];
  /** The school of an id, or nothing when its file is faulty; its own findings are reported where it was parsed. */
  find(id: string): Pick<School, 'terms'> | undefined;
}

const TAUGHT_AS_A_RULE: readonly WeekDay[] = WEEK_DAYS.slice(0, 5);

/**
 * Parses and checks a week.yaml file. A week given by `term` and `week` begins on a Monday counted from the term's
 * first: the Monday on or before the term's first day is the Monday of week 1.
 */
export function parseWeek(file: SourceFile, schools: SchoolLookup): Checked<WeekPlan> {
  const document = parseYamlFile(file);
  const terms = findTerms(document, schools);
  const checks: MeaningCheck[] = [
    (written) => checkReference(written, ['school'], 'school', schools.ids),
    (written) => checkUnique(written, 'day', ['days', '*']),
    checkBeginning,
    checkMonday,
    (written) => checkTerm(written, terms),
    checkReliefNotes,
  ];
  return checkDocument(document, weekSchema, checks, (written) => convertWeek(written, file.path, terms));
}

function findTerms(document: YamlDocument, schools: SchoolLookup): readonly Term[] | undefined {
  const [school] = collectTexts(document, ['school']);
  return school && schools.find(school.text)?.terms;
}

/** Either `begins`, or `term` and `week`. */
function* checkBeginning(document: YamlDocument): Generator<Diagnostic> {
  // An empty file, or one that is no map, lacks more than this.
  if (typeof document.value !== 'object' || document.value === null || Array.isArray(document.value)) return;
  const keys = ['begins', 'term', 'week'].filter((key) => [...collect(document.value, [key])].length > 0);
  const expected = 'either `begins`, or `term` and `week`';
  const first = keys[0];
  if (first === undefined) {
    const message = `this file does not say when the week begins; expected ${expected}; add \`begins\` with the date of its Monday.`;
    yield createFault(document, [], { rule: 'missing-key', message, expected, part: 'key' });
  } else if (keys.length !== (first === 'begins' ? 1 : 2)) {
    const message = `found ${keys.map(quote).join(' and ')}, expected ${expected}; keep or add what is meant.`;
    yield createFault(document, [first], {
      rule: 'wrong-value',
      message,
      found: keys.join(', '),
      expected,
      part: 'key',
    });
  }
}

function* checkMonday(document: YamlDocument): Generator<Diagnostic> {
  for (const { path, text } of collectTexts(document, ['begins'])) {
    if (!isCoveredDate(text)) continue;
    const monday = computeMonday(text);
    if (text === monday && isCoveredDate(addDays(text, 6))) continue;
    const expected = text === monday ? `a week that ends by ${LAST_DATE}` : `a Monday, such as ${monday}`;
    const message = `\`begins\`: found ${quote(text)}, a ${capitalise(computeWeekDay(text))}; expected ${expected.replace(/[\d-]{10}/, quote)}.`;
    yield createFault(document, path, { rule: 'date-range', message, found: text, expected });
  }
}

function capitalise(word: string): string {
  return `${word.slice(0, 1).toUpperCase()}${word.slice(1)}`;
}

function* checkTerm(document: YamlDocument, terms: readonly Term[] | undefined): Generator<Diagnostic> {
  if (terms === undefined) return;
  const names = terms.map(({ name }) => name);
  yield* checkReference(document, ['term'], 'term', names);
  const [name] = collectTexts(document, ['term']);
  const [week] = collect(document.value, ['week']);
  const term = terms.find((each) => each.name === name?.text);
  if (term === undefined || typeof week?.value !== 'number') return;
  const weeks = countWeeks(term);
  if (week.value <= weeks) return;
  const message = `\`week\`: found \`${week.value}\`, expected 1 to ${weeks}: ${quote(term.name)} ends on \`${term.to}\`.`;
  yield createFault(document, ['week'], {
    rule: 'date-range',
    message,
    found: `${week.value}`,
    expected: `1 to ${weeks}`,
  });
}

function countWeeks(term: Term): number {
  let weeks = 1;
  for (let monday = computeMonday(term.from); addDays(monday, 7) <= term.to; monday = addDays(monday, 7)) weeks += 1;
  return weeks;
}

/** A note that is a map has one key, and that is a known case. */
function* checkReliefNotes(document: YamlDocument): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, ['relief-notes', '*'])) {
    if (!isMap(value)) continue;
    const keys = Object.keys(value);
    for (const key of keys.filter((each) => !isReliefCase(each))) {
      const remedy = key.includes(' ') ? '; if it belongs to a text, put that text in quotes' : '';
      const near = describeNearMiss(key, RELIEF_CASES);
      const message = `${describePath([...path, key])}: the key ${quote(key)} is not known${remedy}${near}`;
      yield createFault(document, [...path, key], { rule: 'unknown-key', message, found: key, part: 'key' });
    }
    if (keys.length === 1) continue;
    const found = keys.length === 0 ? 'a note without text' : `${keys.map(quote).join(' and ')} in one note`;
    const message = `${describePath(path)}: found ${found}, expected one text; begin each note with a dash of its own.`;
    yield createFault(document, path, { rule: 'wrong-value', message, found: keys.join(', ') });
  }
}

function isReliefCase(key: string): key is ReliefCase {
  return RELIEF_CASES.some((known) => known === key);
}

function convertNote(note: NonNullable<WrittenWeek['relief-notes']>[number]): ReliefNote[] {
  if (typeof note === 'string') return [{ text: note }];
  return Object.entries(note).flatMap(([when, text]) => (isReliefCase(when) ? [{ text, when }] : []));
}

function convertWeek(written: WrittenWeek, path: string, terms: readonly Term[] | undefined): WeekPlan | undefined {
  const term = terms?.find(({ name }) => name === written.term);
  const begins = written.begins ?? (term && addDays(computeMonday(term.from), 7 * ((written.week ?? 1) - 1)));
  if (begins === undefined) return undefined;
  const { title, school } = written;
  const days = WEEK_DAYS.filter((day) => (written.days ?? TAUGHT_AS_A_RULE).includes(day));
  return {
    id: computeFolderId(path),
    title,
    begins,
    days,
    school,
    for: written.for,
    reliefNotes: (written['relief-notes'] ?? []).flatMap(convertNote),
  };
}
