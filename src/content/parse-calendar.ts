import type { Star, YearMarker } from '../calendar/rules.ts';
import { checkAnchors } from './check-anchors.ts';
import { type Checked, checkDocument } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkOneOf, checkReference, checkUnique, collect, collectTexts, createFault } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { findNearMiss } from './near-miss.ts';
import { calendarSchema, type WrittenCalendar } from './schemas/calendar.ts';
import { findStar, STAR_NAMES } from './star-catalogue.ts';
import { findPlaceholders } from './template.ts';
import type { Calendar, SourceFile } from './types.ts';
import { describeChoice, describePath, quote } from './wording.ts';
import { parseYamlFile, type YamlDocument, type YamlPath } from './yaml-document.ts';

/** Parses and checks a calendar file. */
export function parseCalendar(file: SourceFile): Checked<Calendar> {
  const document = parseYamlFile(file);
  const checks = [
    checkNames,
    checkCounts,
    checkSentence,
    checkMarker,
    checkStar,
    checkVisibility,
    checkAnchors,
    checkRecordLists,
    checkRecordNames,
  ];
  return checkDocument(document, calendarSchema, checks, (written) =>
    convertCalendar(written, computeFileId(file.path)),
  );
}

/** A date may bear one night, and a month be announced once; calendar and school files are checked alike. */
export function* checkRecordLists(document: YamlDocument): Generator<Diagnostic> {
  yield* checkUnique(document, 'date', ['announced-months', '*']);
  const first = new Map<string, { path: YamlPath; night: unknown }>();
  for (const { path, value } of collect(document.value, ['observations', '*'])) {
    const [date] = collect(value, ['date']);
    const [night] = collect(value, ['night']);
    if (typeof date?.value !== 'string') continue;
    const before = first.get(date.value);
    if (before === undefined) {
      first.set(date.value, { path, night: night?.value });
      continue;
    }
    const what = before.night === night?.value ? 'is there twice' : 'has two nights';
    const message = `${describePath(path)}: ${quote(date.value)} ${what}, first at ${describePath(before.path)}; keep the one that is right.`;
    yield createFault(document, path, { rule: 'observation', message, found: date.value, related: before.path });
  }
}

function* checkRecordNames(document: YamlDocument): Generator<Diagnostic> {
  const names = collectTexts(document, ['groups', '*', 'nights', '*', 'name']).map(({ text }) => text);
  yield* checkReference(document, ['observations', '*', 'night'], 'night', names);
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
  for (const key of RISING_KEYS) {
    for (const { path } of collect(document.value, [...marker, key])) {
      if ([...collect(document.value, [...marker, 'rising'])].length > 0) continue;
      const message = `${describePath(path)}: this belongs to \`rising\`, which is not there; remove it.`;
      yield createFault(document, path, { rule: 'wrong-value', message, part: 'key' });
    }
  }
}

/** A star needs its two altitudes, and a place in the sky: its own, or that of the catalogue. */
function* checkStar(document: YamlDocument): Generator<Diagnostic> {
  const marker = ['year-begins', 'on-or-after'];
  for (const { text, path } of collectTexts(document, [...marker, 'rising'])) {
    const isThere = (key: string) => [...collect(document.value, [...marker, key])].length > 0;
    const isPlaced = isThere('right-ascension') || isThere('declination');
    const needed = RISING_KEYS.filter((key) => isPlaced || key.endsWith('-altitude'));
    for (const key of needed.filter((each) => !isThere(each))) {
      const message = `${describePath([...marker, key])} is missing; expected a number of ${key === 'right-ascension' ? 'hours' : 'degrees'}; add it.`;
      yield createFault(document, marker, { rule: 'missing-key', message, part: 'key' });
    }
    if (isPlaced || findStar(text) !== undefined) continue;
    const near = findNearMiss(text, STAR_NAMES);
    const advice = near === undefined ? '' : `did you mean ${quote(near)}? `;
    const message = `${describePath(path)}: the star ${quote(text)} is not in the catalogue; ${advice}Expected ${describeChoice(STAR_NAMES)}, or any name with \`right-ascension\` and \`declination\`.`;
    yield createFault(document, path, { rule: 'unknown-reference', message, found: text });
  }
}

const RISING_KEYS = ['star-altitude', 'sun-altitude', 'right-ascension', 'declination'] as const;

function* checkVisibility(document: YamlDocument): Generator<Diagnostic> {
  const [at] = collectTexts(document, ['month-begins', 'at']);
  if (at === undefined || at.text === 'first-crescent') return;
  for (const { path } of collect(document.value, ['month-begins', 'visibility'])) {
    const message = `${describePath(path)}: this belongs to \`at: first-crescent\`, which is not there; remove it.`;
    yield createFault(document, path, { rule: 'wrong-value', message, part: 'key' });
  }
}

function convertCalendar(written: WrittenCalendar, id: string): Calendar | undefined {
  const onOrAfter = convertMarker(written['year-begins']['on-or-after']);
  if (onOrAfter === undefined) return undefined;
  const { title, language, keeper, sharing, note, months, sentence, groups } = written;
  const { at, offset = 0, visibility } = written['month-begins'];
  const thirteenthMonth = written['thirteenth-month'];
  return {
    ...{ id, title, language, keeper, sharing, months, sentence, groups },
    ...(note !== undefined && { note }),
    ...(thirteenthMonth && { thirteenthMonth }),
    dayBegins: written['day-begins'],
    monthBegins: { at, offset, ...(visibility !== undefined && { visibility }) },
    yearBegins: { phase: written['year-begins'].phase, onOrAfter },
    observations: written.observations ?? [],
    announcedMonths: written['announced-months'] ?? [],
  };
}

function convertMarker(marker: WrittenCalendar['year-begins']['on-or-after']): YearMarker | undefined {
  if (marker.date !== undefined) return { kind: 'date', monthDay: marker.date };
  if (marker.solstice !== undefined) return { kind: 'solstice', month: marker.solstice };
  if (marker.equinox !== undefined) return { kind: 'equinox', month: marker.equinox };
  const star = convertStar(marker);
  const starAltitudeDegrees = marker['star-altitude'];
  const sunAltitudeDegrees = marker['sun-altitude'];
  if (star === undefined || starAltitudeDegrees === undefined || sunAltitudeDegrees === undefined) return undefined;
  return { kind: 'rising', star, starAltitudeDegrees, sunAltitudeDegrees };
}

/** The star where the file puts it, else where the catalogue does. */
function convertStar(marker: WrittenCalendar['year-begins']['on-or-after']): Star | undefined {
  const { rising: name, 'right-ascension': rightAscensionHours, declination: declinationDegrees } = marker;
  if (name === undefined) return undefined;
  if (rightAscensionHours === undefined || declinationDegrees === undefined) return findStar(name);
  return { name, rightAscensionHours, declinationDegrees };
}
