import type { Checked } from './check-value.ts';
import type { Diagnostic, SourcePlace } from './diagnostic.ts';
import { collect } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { createLabels, findLabelFileId, type LabelFile, type Labels } from './labels.ts';
import { checkLabelsOf, checkNightGestures, checkSchoolReferences, type LibraryFiles } from './library.ts';
import { parseCalendar } from './parse-calendar.ts';
import { parseGestureSet } from './parse-gesture-set.ts';
import { parseLabelFile } from './parse-label-file.ts';
import { parseQuestionBank } from './parse-question-bank.ts';
import { completeSchool, parseSchool, type WrittenSchool } from './parse-school.ts';
import type { SchoolLookup } from './parse-week.ts';
import { applySchoolRecords } from './school-records.ts';
import type { Calendar, GestureSet, QuestionBank, School, SourceFile } from './types.ts';

/** A school with all that its lessons draw on. */
export interface OpenedSchool {
  readonly school: School;
  readonly calendar: Calendar;
  readonly gestures: GestureSet;
  readonly labels: Labels;
}

/** Something read from content files; the value is absent after an error. Asking again gives the same objects. */
export interface Opened<Value> {
  readonly value?: Value;
  readonly diagnostics: readonly Diagnostic[];
}

/** A gestures file with the places of its gestures. */
export interface PlacedGestures {
  readonly set: GestureSet;
  /** Where a gesture's key stands. */
  placeOf(key: string): SourcePlace;
}

/** Content files, parsed only when a week asks for them, and once. */
export interface OpenLibrary {
  /** For `parseWeek`. */
  readonly schools: SchoolLookup;
  /** Ids of the schools that a command may mean when it names none: the only one, or those with `home: true`. */
  findHomeSchools(): readonly string[];
  readonly calendarIds: readonly string[];
  /** Ids of all gestures files. */
  readonly gestureIds: readonly string[];
  /** A checked gestures file by id, for findings about it; nothing when it is not there, or has an error. */
  findGestures(id: string): PlacedGestures | undefined;
  /** A school by id, with its own calendar or another one. Undefined when there is no such school or calendar file. */
  openSchool(id: string, calendarId?: string): Opened<OpenedSchool> | undefined;
  /** The questions files that any of the texts names, as `use=…` writes it. */
  openBanks(texts: readonly string[]): Opened<ReadonlyMap<string, QuestionBank>>;
}

/** Opens a library over files as read; nothing is parsed yet. */
export function openLibrary(files: LibraryFiles): OpenLibrary {
  const schools = createShelf(files.schools, parseSchool);
  const calendars = createShelf(files.calendars, (file) => parseCalendar(file, files.assets));
  const gestureSets = createShelf(files.gestures, (file) => parseGestureSet(file, files.assets));
  const labelFiles = createShelf(files.labels, parseLabelFile);
  const banks = createShelf(files.questions, parseQuestionBank);
  const shelves = { schools, calendars, gestureSets, labelFiles };
  const opened = new Map<string, Opened<OpenedSchool>>();
  return {
    schools: { ids: schools.ids, find: (id) => schools.find(id)?.value },
    findHomeSchools: () =>
      schools.ids.length === 1 ? schools.ids : schools.ids.filter((id) => isHome(schools.find(id))),
    calendarIds: calendars.ids,
    gestureIds: gestureSets.ids,
    findGestures(id) {
      const { value, document } = gestureSets.find(id) ?? {};
      if (value === undefined || document === undefined) return undefined;
      return { set: value, placeOf: (key) => document.placeOf(['gestures', key], 'key') };
    },
    openSchool(id, calendarId) {
      if (calendarId !== undefined && calendars.find(calendarId) === undefined) return undefined;
      const key = JSON.stringify([id, calendarId]);
      const result = opened.get(key) ?? openFrom(shelves, id, calendarId);
      if (result !== undefined) opened.set(key, result);
      return result;
    },
    openBanks(texts) {
      const named = banks.ids.filter((id) => texts.some((text) => text.includes(`${id}/`)));
      const found = named.flatMap((id) => banks.find(id) ?? []);
      return {
        value: new Map(found.flatMap(({ value }) => (value === undefined ? [] : [[value.id, value] as const]))),
        diagnostics: found.flatMap(({ diagnostics }) => diagnostics),
      };
    },
  };
}

/** Whether a school's file says so, whatever else is wrong in it: its mistakes are then what is to be told. */
function isHome(school: Checked<WrittenSchool> | undefined): boolean {
  return [...collect(school?.document.value, ['home'])].some(({ value }) => value === true);
}

/** The files that a school's lessons draw on. */
interface Shelves {
  readonly schools: Shelf<WrittenSchool>;
  readonly calendars: Shelf<Calendar>;
  readonly gestureSets: Shelf<GestureSet>;
  readonly labelFiles: Shelf<LabelFile>;
}

function openFrom(shelves: Shelves, id: string, calendarId: string | undefined): Opened<OpenedSchool> | undefined {
  const checked = shelves.schools.find(id);
  if (checked === undefined) return undefined;
  const { calendars, gestureSets, labelFiles } = shelves;
  const ids = { calendars: calendars.ids, gestures: gestureSets.ids, labels: labelFiles.ids };
  const diagnostics = [...checked.diagnostics, ...checkSchoolReferences(checked, ids)];
  const written = checked.value;
  if (written === undefined) return { diagnostics };
  const calendar = calendars.find(calendarId ?? written.calendar);
  const gestures = gestureSets.find(written.gestures);
  diagnostics.push(...(calendar?.diagnostics ?? []), ...(gestures?.diagnostics ?? []));
  if (calendar?.value === undefined || gestures?.value === undefined) return { diagnostics };
  const isOwn = calendarId === undefined || calendarId === written.calendar;
  diagnostics.push(...checkGesturesOf(calendar, gestures.value, isOwn));
  // What a school saw is told in the names of its own calendar.
  const counted = isOwn ? applySchoolRecords(checked, calendar) : { value: calendar.value, diagnostics: [] };
  diagnostics.push(...counted.diagnostics);
  if (counted.value === undefined) return { diagnostics };
  const spoken = openLanguage(written, calendar, calendar.value, labelFiles);
  diagnostics.push(...spoken.diagnostics);
  const { school, labels } = spoken;
  return { value: { school, calendar: counted.value, gestures: gestures.value, labels }, diagnostics };
}

/** A calendar that stands in for the school's own can be looked at; only the gestures of its nights are not known here. */
function checkGesturesOf(calendar: Checked<Calendar>, gestures: GestureSet, isOwn: boolean): Diagnostic[] {
  const unknown = checkNightGestures(calendar, gestures);
  return isOwn ? unknown : mergeIntoWarning(unknown, gestures);
}

/** The school in its language, which may be the calendar's, and the words of it. */
function openLanguage(
  written: WrittenSchool,
  source: Checked<Calendar>,
  calendar: Calendar,
  labelFiles: Shelf<LabelFile>,
) {
  const school = completeSchool(written, calendar);
  const missing = written.language === undefined ? checkLabelsOf(source, school.language, labelFiles.ids) : [];
  const file = labelFiles.find(findLabelFileId(school.language, labelFiles.ids) ?? '');
  const labels = createLabels(school.language, file?.value);
  return { school, labels, diagnostics: [...missing, ...(file?.diagnostics ?? [])] };
}

function mergeIntoWarning(unknown: readonly Diagnostic[], gestures: GestureSet): Diagnostic[] {
  const [first] = unknown;
  if (first === undefined) return [];
  const message = `\`${unknown.length}\` nights have a gesture that \`${gestures.id}\` does not know, expected gestures of that file; their cards will be empty, name another school if that matters.`;
  return [{ rule: first.rule, severity: 'warning', place: first.place, message }];
}

/** Files of one kind, by id, each parsed when first asked for. */
interface Shelf<Value> {
  readonly ids: readonly string[];
  find(id: string): Checked<Value> | undefined;
}

function createShelf<Value>(files: readonly SourceFile[], parse: (file: SourceFile) => Checked<Value>): Shelf<Value> {
  const byId = new Map(files.map((file) => [computeFileId(file.path), file]));
  const parsed = new Map<string, Checked<Value>>();
  return {
    ids: [...byId.keys()],
    find(id: string): Checked<Value> | undefined {
      const file = byId.get(id);
      if (file === undefined) return undefined;
      const checked = parsed.get(id) ?? parse(file);
      parsed.set(id, checked);
      return checked;
    },
  };
}
