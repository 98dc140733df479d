import type { YearMarker } from '../calendar/rules.ts';
import { type Checked, checkDocument } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkNotYet, checkOneOf, checkUnique, collect, collectTexts, createFault } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { calendarSchema, type WrittenCalendar } from './schemas/calendar.ts';
import { findPlaceholders } from './template.ts';
import type { Calendar, SourceFile } from './types.ts';
import { describeChoice, quote } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

const NOT_YET_OBSERVATIONS =
  'observations of the sky are not used yet by this version; leave them out and keep them elsewhere.';

/** Parses and checks a calendar file. */
export function parseCalendar(file: SourceFile): Checked<Calendar> {
  const document = parseYamlFile(file);
  const checks = [checkNames, checkCounts, checkSentence, checkMarker, checkCalendarNotYet];
  return checkDocument(document, calendarSchema, checks, (written) =>
    convertCalendar(written, computeFileId(file.path)),
  );
}

/** Observations are accepted in calendar and school files and answered alike. */
export function checkObservations(document: YamlDocument): Iterable<Diagnostic> {
  return checkNotYet(document, ['observations'], NOT_YET_OBSERVATIONS);
}

function* checkNames(document: YamlDocument): Generator<Diagnostic> {
  yield* checkUnique(document, 'group', ['groups', '*', 'name']);
  yield* checkUnique(document, 'night', ['groups', '*', 'nights', '*', 'name']);
  yield* checkUnique(document, 'month', ['months', '*', 'name'], ['thirteenth-month', 'name']);
}

function* checkCounts(document: YamlDocument): Generator<Diagnostic> {
  const nights = [...collect(document.value, ['groups', '*', 'nights', '*'])].length;
  if (nights > 0 && (nights < 10 || nights > 40)) {
    const message = `\`groups\`: found ${nights} nights in all, expected 10 to 40; add or remove nights.`;
    yield createFault(document, ['groups'], {
      rule: 'wrong-value',
      message,
      found: `${nights}`,
      expected: '10 to 40',
      part: 'key',
    });
  } else if (nights > 0 && (nights < 27 || nights > 32)) {
    const message = `\`groups\`: found ${nights} nights in all, expected 27 to 32 as a rule; check that none is missing or doubled.`;
    const expected = '27 to 32';
    yield createFault(document, ['groups'], {
      rule: 'wrong-value',
      severity: 'warning',
      message,
      found: `${nights}`,
      expected,
      part: 'key',
    });
  }
  const months = [...collect(document.value, ['months', '*'])].length;
  if (months > 0 && months !== 12 && months !== 13) {
    const message = `\`months\`: found ${months} months, expected 12 or 13; add or remove months.`;
    yield createFault(document, ['months'], {
      rule: 'wrong-value',
      message,
      found: `${months}`,
      expected: '12 or 13',
      part: 'key',
    });
  }
}

function* checkSentence(document: YamlDocument): Generator<Diagnostic> {
  for (const { path, text } of collectTexts(document, ['sentence'])) {
    const allowed = ['night', 'month'];
    const there = findPlaceholders(text);
    const expected = '`{night}`, and `{month}` if wanted';
    for (const name of there.filter((each) => !allowed.includes(each))) {
      const message = `\`sentence\`: ${quote(`{${name}}`)} is not known, expected ${expected}; use only these.`;
      yield createFault(document, path, { rule: 'wrong-value', message, found: `{${name}}`, expected });
    }
    if (text === '' || there.some((name) => name !== 'month')) continue;
    const message = `\`sentence\`: found no \`{night}\`, expected ${expected}; write \`{night}\` where the name goes.`;
    yield createFault(document, path, { rule: 'wrong-value', message, found: text, expected });
  }
}

function* checkMarker(document: YamlDocument): Generator<Diagnostic> {
  const marker = ['year-begins', 'on-or-after'];
  yield* checkOneOf(document, marker, ['date', 'solstice', 'equinox', 'rising']);
  for (const key of ['star-altitude', 'sun-altitude']) {
    for (const { path } of collect(document.value, [...marker, key])) {
      if ([...collect(document.value, [...marker, 'rising'])].length > 0) continue;
      const message = `\`${path.join('.')}\`: this belongs to \`rising\`, which is not there; remove it.`;
      yield createFault(document, path, { rule: 'wrong-value', message, part: 'key' });
    }
  }
}

function* checkCalendarNotYet(document: YamlDocument): Generator<Diagnostic> {
  yield* checkNotYet(
    document,
    ['groups', '*', 'nights', '*', 'anchor'],
    'tying a night to a phase of the Moon is not computed yet by this version; remove the key, names then run in order.',
  );
  yield* checkNotYet(
    document,
    ['groups', '*', 'nights', '*', 'flexible'],
    'leaving out or repeating a night is not computed yet by this version; remove the key, names then run in order.',
  );
  yield* checkNotYet(
    document,
    ['month-begins', 'visibility'],
    'the visibility of the first crescent is not computed yet by this version; remove the key.',
  );
  yield* checkNotYet(
    document,
    ['year-begins', 'on-or-after', 'rising'],
    `the rising of a star is not computed yet by this version; use ${describeChoice(['date', 'solstice', 'equinox'])} instead.`,
  );
  for (const { path, text } of collectTexts(document, ['month-begins', 'at'])) {
    if (text !== 'first-crescent') continue;
    const message =
      '`month-begins.at`: months from the `first-crescent` are not computed yet by this version; use `conjunction` with an `offset` of 1 or 2 instead.';
    yield createFault(document, path, { rule: 'not-yet', message, found: text });
  }
  yield* checkObservations(document);
}

function convertCalendar(written: WrittenCalendar, id: string): Calendar | undefined {
  const at = written['month-begins'].at;
  const onOrAfter = convertMarker(written['year-begins']['on-or-after']);
  if (at === 'first-crescent' || onOrAfter === undefined) return undefined;
  const { title, language, keeper, sharing, note, months, sentence } = written;
  const thirteenthMonth = written['thirteenth-month'];
  return {
    ...{ id, title, language, keeper, sharing, months, sentence },
    ...(note !== undefined && { note }),
    ...(thirteenthMonth && { thirteenthMonth }),
    dayBegins: written['day-begins'],
    monthBegins: { at, offset: written['month-begins'].offset ?? 0 },
    yearBegins: { phase: written['year-begins'].phase, onOrAfter },
    groups: written.groups.map((group) => ({ ...group, nights: group.nights.map(convertNight) })),
  };
}

/** Only the keys that are computed: `anchor` and `flexible` are errors as long as they are there. */
function convertNight(night: WrittenCalendar['groups'][number]['nights'][number]) {
  const { anchor: _anchor, flexible: _flexible, ...rest } = night;
  return rest;
}

function convertMarker(marker: WrittenCalendar['year-begins']['on-or-after']): YearMarker | undefined {
  if (marker.date !== undefined) return { kind: 'date', monthDay: marker.date };
  if (marker.solstice !== undefined) return { kind: 'solstice', month: marker.solstice };
  return marker.equinox && { kind: 'equinox', month: marker.equinox };
}
