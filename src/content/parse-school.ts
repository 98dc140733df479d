import { type Checked, checkDocument } from './check-value.ts';
import { findTimeZone, isCivilDate } from './civil-date.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkUnique, collect, createFault } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { checkObservations } from './parse-calendar.ts';
import { schoolSchema, type WrittenSchoolFile } from './schemas/school.ts';
import type { Calendar, School, SourceFile } from './types.ts';
import { describePath, quote } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** A school file, checked; its language may still be left to the calendar. */
export type WrittenSchool = Omit<School, 'language'> & { readonly language?: string };

/** Parses and checks a school file; whether its calendar and gestures exist is checked by `checkSchoolReferences`. */
export function parseSchool(file: SourceFile): Checked<WrittenSchool> {
  const document = parseYamlFile(file);
  const checks = [checkNames, checkTerms, checkObservations];
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
    classBegins: written['class-begins'],
    place: {
      latitudeDegrees: written.latitude,
      longitudeDegrees: written.longitude,
      elevationMetres: written.elevation,
      timeZone: findTimeZone(written['time-zone']) ?? written['time-zone'],
    },
  };
}
