import { checkRecordLists } from './check-record-lists.ts';
import { type Checked, checkDocument } from './check-value.ts';
import { findTimeZone, isCivilDate, isClockTime } from './civil-date.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkUnique, collect, createFault } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { schoolSchema, type WrittenSchoolFile } from './schemas/school.ts';
import type { Calendar, School, SourceFile } from './types.ts';
import { describePath, quote } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** A school file, checked; its language may still be left to the calendar. */
export type WrittenSchool = Omit<School, 'language'> & { readonly language?: string };

/** Parses and checks a school file; whether its calendar and gestures exist is checked by `checkSchoolReferences`. */
export function parseSchool(file: SourceFile): Checked<WrittenSchool> {
  const document = parseYamlFile(file);
  const checks = [checkNames, checkTerms, checkHours, checkRecordLists];
  return checkDocument(document, schoolSchema, checks, (written) => convertSchool(written, computeFileId(file.path)));
}

/** The school with its language, which is the calendar's when the school's file does not say. */
export function completeSchool(school: WrittenSchool, calendar: Calendar): School {
  return { ...school, language: school.language ?? calendar.language };
}

function* checkNames(document: YamlDocument): Generator<Diagnostic> {
  yield* checkUnique(document, 'term', ['terms', '*', 'name']);
  yield* checkUnique(document, 'group', ['groups', '*']);
}

function* checkHours(document: YamlDocument): Generator<Diagnostic> {
  const [begins] = collect(document.value, ['class-begins']);
  const [ends] = collect(document.value, ['class-ends']);
  if (typeof begins?.value !== 'string' || typeof ends?.value !== 'string' || begins.value <= ends.value) return;
  if (!isClockTime(begins.value) || !isClockTime(ends.value)) return;
  yield createFault(document, ends.path, {
    rule: 'wrong-value',
    message: `${describePath(ends.path)}: found ${quote(ends.value)}, which is before ${quote(begins.value)}; expected the end of the school day.`,
    found: ends.value,
    expected: `${begins.value} or later`,
    related: begins.path,
  });
}

function* checkTerms(document: YamlDocument): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, ['terms', '*'])) {
    const from = findDate(value, 'from');
    const to = findDate(value, 'to');
    if (from === undefined || to === undefined || from <= to) continue;
    const message = `${describePath([...path, 'to'])}: found ${quote(to)}, which is before ${quote(from)}; expected the last day of the term.`;
    const expected = `${from} or later`;
    yield createFault(document, [...path, 'to'], {
      rule: 'wrong-value',
      message,
      found: to,
      expected,
      related: [...path, 'from'],
    });
  }
}

function findDate(term: unknown, key: string): string | undefined {
  const [found] = collect(term, [key]);
  return typeof found?.value === 'string' && isCivilDate(found.value) ? found.value : undefined;
}

function convertSchool(written: WrittenSchoolFile, id: string): WrittenSchool {
  const { name, language, note, calendar, gestures, terms = [], groups, home = false } = written;
  return {
    ...{ id, name, calendar, gestures, terms, groups, home },
    ...(language !== undefined && { language }),
    ...(note !== undefined && { note }),
    ...(written.observations && { observations: written.observations }),
    ...(written['announced-months'] && { announcedMonths: written['announced-months'] }),
    classBegins: written['class-begins'],
    classEnds: written['class-ends'] ?? chooseEnd(written['class-begins']),
    bedtime: written.bedtime ?? '20:30',
    place: {
      latitudeDegrees: written.latitude,
      longitudeDegrees: written.longitude,
      elevationMetres: written.elevation,
      timeZone: findTimeZone(written['time-zone']) ?? written['time-zone'],
    },
  };
}

/** A school that begins in the afternoon or evening and does not say when it ends may go on to the end of the day. */
function chooseEnd(classBegins: string): string {
  return classBegins < '15:00' ? '15:00' : '23:59';
}
