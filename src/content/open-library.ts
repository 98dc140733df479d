import type { Checked } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { computeFileId } from './file-id.ts';
import { createLabels, findLabelFileId, type Labels } from './labels.ts';
import { checkLabelsOf, checkNightGestures, checkSchoolReferences, type LibraryFiles } from './library.ts';
import { parseCalendar } from './parse-calendar.ts';
import { parseGestureSet } from './parse-gesture-set.ts';
import { parseLabelFile } from './parse-label-file.ts';
import { parseQuestionBank } from './parse-question-bank.ts';
import { completeSchool, parseSchool } from './parse-school.ts';
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

/** Content files, parsed only when a week asks for them, and once. */
export interface OpenLibrary {
  /** For `parseWeek`. */
  readonly schools: SchoolLookup;
  /** Ids of the schools that a command may mean when it names none: the only one, or those with `home: true`. */
  findHomeSchools(): readonly string[];
  readonly calendarIds: readonly string[];
  /** A school by id, with its own calendar or another one. Undefined when there is no such school or calendar file. */
  openSchool(id: string, calendarId?: string): Opened<OpenedSchool> | undefined;
  /** The questions files that any of the texts names, as `use=…` writes it. */
  openBanks(texts: readonly string[]): Opened<ReadonlyMap<string, QuestionBank>>;
}

/** Opens a library over files as read; nothing is parsed yet. */
export function openLibrary(files: LibraryFiles): OpenLibrary {
  const schools = createShelf(files.schools, parseSchool);
  const calendars = createShelf(files.calendars, parseCalendar);
  const gestureSets = createShelf(files.gestures, parseGestureSet);
  const labelFiles = createShelf(files.labels, parseLabelFile);
  const banks = createShelf(files.questions, parseQuestionBank);
  const opened = new Map<string, Opened<OpenedSchool>>();

  const open = (id: string, calendarId: string | undefined): Opened<OpenedSchool> | undefined => {
    const checkedSchool = schools.find(id);
    if (checkedSchool === undefined) return undefined;
    const written = checkedSchool.value;
    const ids = { calendars: calendars.ids, gestures: gestureSets.ids, labels: labelFiles.ids };
    const diagnostics = [...checkedSchool.diagnostics, ...checkSchoolReferences(checkedSchool, ids)];
    if (written === undefined) return { diagnostics };
    const calendar = calendars.find(calendarId ?? written.calendar);
    const gestures = gestureSets.find(written.gestures);
    diagnostics.push(...(calendar?.diagnostics ?? []), ...(gestures?.diagnostics ?? []));
    if (calendar?.value === undefined || gestures?.value === undefined) return { diagnostics };
    const unknownGestures = checkNightGestures(calendar, gestures.value);
    // A calendar that stands in for the school's own can be looked at; only the gestures of its nights are not known here.
    diagnostics.push(
      ...(calendarId === undefined ? unknownGestures : mergeIntoWarning(unknownGestures, gestures.value)),
    );
    // What a school saw is told in the names of its own calendar.
    const counted =
      calendarId === undefined || calendarId === written.calendar
        ? applySchoolRecords(checkedSchool, calendar)
        : { value: calendar.value, diagnostics: [] };
    diagnostics.push(...counted.diagnostics);
    if (counted.value === undefined) return { diagnostics };
    const school = completeSchool(written, calendar.value);
    if (written.language === undefined) diagnostics.push(...checkLabelsOf(calendar, school.language, labelFiles.ids));
    const labelFile = labelFiles.find(findLabelFileId(school.language, labelFiles.ids) ?? '');
    diagnostics.push(...(labelFile?.diagnostics ?? []));
    const labels = createLabels(school.language, labelFile?.value);
    return { value: { school, calendar: counted.value, gestures: gestures.value, labels }, diagnostics };
  };

  return {
    schools: { ids: schools.ids, find: (id) => schools.find(id)?.value },
    findHomeSchools: () =>
      schools.ids.length === 1 ? schools.ids : schools.ids.filter((id) => schools.find(id)?.value?.home === true),
    calendarIds: calendars.ids,
    openSchool(id, calendarId) {
      if (calendarId !== undefined && calendars.find(calendarId) === undefined) return undefined;
      const key = JSON.stringify([id, calendarId]);
      const result = opened.get(key) ?? open(id, calendarId);
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

function mergeIntoWarning(unknown: readonly Diagnostic[], gestures: GestureSet): Diagnostic[] {
  const [first] = unknown;
  if (first === undefined) return [];
  const message = `\`${unknown.length}\` nights have a gesture that \`${gestures.id}\` does not know, expected gestures of that file; their cards will be empty, name another school if that matters.`;
  return [{ rule: first.rule, severity: 'warning', place: first.place, message }];
}

/** Files of one kind, by id, each parsed when first asked for. */
function createShelf<Value>(files: readonly SourceFile[], parse: (file: SourceFile) => Checked<Value>) {
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
