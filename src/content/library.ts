import type { Checked } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkReference, createFault, type Finding } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { findLabelFileId, isEnglish, type LabelFile } from './labels.ts';
import type { ContentAssets } from './media/content-assets.ts';
import { parseCalendar } from './parse-calendar.ts';
import { parseGestureSet } from './parse-gesture-set.ts';
import { parseLabelFile } from './parse-label-file.ts';
import { parseQuestionBank } from './parse-question-bank.ts';
import { completeSchool, parseSchool, type WrittenSchool } from './parse-school.ts';
import { applySchoolRecords } from './school-records.ts';
import type { Calendar, GestureSet, QuestionBank, School, SourceFile } from './types.ts';
import { quote } from './wording.ts';

/** The content files there are, of each kind. */
export interface LibraryFiles {
  readonly calendars: readonly SourceFile[];
  readonly schools: readonly SourceFile[];
  readonly gestures: readonly SourceFile[];
  readonly questions: readonly SourceFile[];
  readonly labels: readonly SourceFile[];
  /** Pictures and sounds that calendars and gestures name; left out where there are none. */
  readonly assets?: ContentAssets;
}

/** Checked content by id. A file with an error is left out, and a school with its calendar. */
export interface Library {
  readonly calendars: ReadonlyMap<string, Calendar>;
  readonly schools: ReadonlyMap<string, School>;
  readonly gestures: ReadonlyMap<string, GestureSet>;
  readonly questions: ReadonlyMap<string, QuestionBank>;
  readonly labels: ReadonlyMap<string, LabelFile>;
}

/**
 * Checks all content files and what they say of each other. All faults of all files come back together, file by file in
 * the order given, each file's by line. Whoever needs only some of the files parses those with the functions of the
 * parse files and then calls the checks below.
 */
export function loadLibrary(files: LibraryFiles): { library: Library; diagnostics: Diagnostic[] } {
  const calendars = parseAll(files.calendars, (file) => parseCalendar(file, files.assets));
  const schools = parseAll(files.schools, parseSchool);
  const gestures = parseAll(files.gestures, (file) => parseGestureSet(file, files.assets));
  const questions = parseAll(files.questions, parseQuestionBank);
  const labels = parseAll(files.labels, parseLabelFile);
  const ids = {
    calendars: [...calendars.byId.keys()],
    gestures: [...gestures.byId.keys()],
    labels: [...labels.byId.keys()],
  };
  const between = [
    ...checkHomes([...schools.byId.values()]),
    ...[...schools.byId.values()].flatMap((school) => checkSchoolReferences(school, ids)),
    ...findCalendarsThatSpeak(schools.byId, calendars.byId).flatMap((calendar) =>
      checkLabelsOf(calendar, calendar.value?.language ?? 'en', ids.labels),
    ),
  ];
  const library = {
    calendars: keepValues(calendars.byId),
    schools: completeSchools(schools.byId, calendars.byId),
    gestures: keepValues(gestures.byId),
    questions: keepValues(questions.byId),
    labels: keepValues(labels.byId),
  };
  const found = [calendars, schools, gestures, questions, labels].flatMap(({ diagnostics }) => diagnostics);
  const records = checkAllRecords(schools.byId, calendars.byId);
  const unknownGestures = checkAllNightGestures(schools.byId, calendars.byId, gestures.byId);
  return { library, diagnostics: [...found, ...between, ...records, ...unknownGestures] };
}

/** Only one school can be meant when none is named. */
function checkHomes(schools: readonly Checked<WrittenSchool>[]): Diagnostic[] {
  const [first, ...others] = schools.filter(({ value }) => value?.home === true);
  return others.map(({ document }) => ({
    ...createFault(document, ['home'], {
      rule: 'repeated-name',
      message: '`home`: another school is the home school already; keep `home: true` in one school file.',
    }),
    ...(first && { related: first.document.placeOf(['home']) }),
  }));
}

/** Ids of the files that are there, whether or not they are read. */
export interface KnownIds {
  readonly calendars: readonly string[];
  readonly gestures: readonly string[];
  readonly labels: readonly string[];
}

/** Checks that a school's calendar and gestures exist (errors), and labels for its own language (a warning). */
export function checkSchoolReferences(school: Checked<WrittenSchool>, known: KnownIds): Diagnostic[] {
  const { document, value } = school;
  if (document.faults.length > 0) return [];
  return [
    ...checkReference(document, ['calendar'], 'calendar', known.calendars),
    ...checkReference(document, ['gestures'], 'gestures file', known.gestures),
    ...(value?.language === undefined ? [] : checkLabelsOf(school, value.language, known.labels)),
  ];
}

/**
 * Warns when there is no labels file for a language: the fixed words of packs will be English.
 * @param source The file that states the language: the school's, or else its calendar's.
 */
export function checkLabelsOf(source: Checked<unknown>, language: string, labelIds: readonly string[]): Diagnostic[] {
  if (isEnglish(language) || findLabelFileId(language, labelIds) !== undefined) return [];
  const message = `\`language\`: there are no labels for ${quote(language)}, the fixed words of packs will be English; add a labels file for it.`;
  const fault: Finding = { rule: 'label-missing', severity: 'warning', message, found: language };
  return [createFault(source.document, ['language'], fault)];
}

/** Checks that the gesture of each night of a calendar is in a gestures file. */
export function checkNightGestures(calendar: Checked<Calendar>, gestures: GestureSet): Diagnostic[] {
  if (calendar.document.faults.length > 0) return [];
  const pattern = ['groups', '*', 'nights', '*', 'gesture'];
  return [...checkReference(calendar.document, pattern, 'gesture', Object.keys(gestures.gestures))];
}

/** Two files whose names differ only in their folder, ending or encoding have the same id: the first counts. */
function parseAll<Value>(files: readonly SourceFile[], parse: (file: SourceFile) => Checked<Value>) {
  const byId = new Map<string, Checked<Value>>();
  const diagnostics: Diagnostic[] = [];
  for (const file of files) {
    const id = computeFileId(file.path);
    const checked = parse(file);
    const first = byId.get(id)?.document;
    diagnostics.push(...checked.diagnostics);
    if (first) {
      const message = `There are two files called ${quote(id)}, the other is ${quote(first.file)}; rename one.`;
      diagnostics.push({
        ...createFault(checked.document, [], { rule: 'repeated-name', message }),
        related: first.placeOf([]),
      });
    } else byId.set(id, checked);
  }
  return { byId, diagnostics };
}

/** Calendars whose language is that of a school which states none. */
function findCalendarsThatSpeak(
  schools: ReadonlyMap<string, Checked<WrittenSchool>>,
  calendars: ReadonlyMap<string, Checked<Calendar>>,
): Checked<Calendar>[] {
  const silent = [...schools.values()].flatMap(({ value }) => (value && value.language === undefined ? [value] : []));
  return [...new Set(silent.map(({ calendar }) => calendar))].flatMap((id) => calendars.get(id) ?? []);
}

function keepValues<Value>(checked: ReadonlyMap<string, Checked<Value>>): Map<string, Value> {
  const kept = new Map<string, Value>();
  for (const [id, { value }] of checked) if (value !== undefined) kept.set(id, value);
  return kept;
}

function completeSchools(
  schools: ReadonlyMap<string, Checked<WrittenSchool>>,
  calendars: ReadonlyMap<string, Checked<Calendar>>,
): Map<string, School> {
  const complete = new Map<string, School>();
  for (const [id, { value }] of schools) {
    const calendar = value && calendars.get(value.calendar)?.value;
    if (value && calendar) complete.set(id, completeSchool(value, calendar));
  }
  return complete;
}

/** What was seen and announced, at every school; what a calendar's own file says wrongly to several of them is told once. */
function checkAllRecords(
  schools: ReadonlyMap<string, Checked<WrittenSchool>>,
  calendars: ReadonlyMap<string, Checked<Calendar>>,
): Diagnostic[] {
  const found = [...schools.values()].flatMap((school) => {
    const calendar = calendars.get(school.value?.calendar ?? '');
    return calendar === undefined ? [] : applySchoolRecords(school, calendar).diagnostics;
  });
  return [...new Map(found.map((diagnostic) => [JSON.stringify(diagnostic), diagnostic])).values()];
}

/** Every pair of calendar and gestures that some school uses is checked once. */
function checkAllNightGestures(
  schools: ReadonlyMap<string, Checked<WrittenSchool>>,
  calendars: ReadonlyMap<string, Checked<Calendar>>,
  gestures: ReadonlyMap<string, Checked<GestureSet>>,
): Diagnostic[] {
  const pairs = new Map<string, Diagnostic[]>();
  for (const { value } of schools.values()) {
    const calendar = value && calendars.get(value.calendar);
    const set = value && gestures.get(value.gestures)?.value;
    const pair = JSON.stringify([value?.calendar, value?.gestures]);
    if (calendar && set && !pairs.has(pair)) pairs.set(pair, checkNightGestures(calendar, set));
  }
  return [...pairs.values()].flat();
}
