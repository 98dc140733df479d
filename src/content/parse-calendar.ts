import type { Star, YearMarker } from '../calendar/rules.ts';
import { checkAnchors } from './check-anchors.ts';
import { checkMarker, checkStar } from './check-marker.ts';
import { checkRecordLists, checkRecordNames } from './check-record-lists.ts';
import { type Checked, checkDocument } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkUnique, collect, collectTexts, createFault } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { type ContentAssets, NO_ASSETS } from './media/content-assets.ts';
import { createMediaReader, type MediaReader } from './media/media-reader.ts';
import { MOST_NAME_BYTES } from './media/parse-sound.ts';
import { checkRecordings, convertRecording } from './recordings.ts';
import { calendarSchema, type WrittenCalendar } from './schemas/calendar.ts';
import { findStar } from './star-catalogue.ts';
import { findPlaceholders } from './template.ts';
import type { Calendar, Recording, SourceFile } from './types.ts';
import { describePath, quote } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** Parses and checks a calendar file, and reads the recordings that it names. */
export function parseCalendar(file: SourceFile, assets: ContentAssets = NO_ASSETS): Checked<Calendar> {
  const document = parseYamlFile(file);
  const media = createMediaReader(document, assets);
  const checks = [
    checkNames,
    checkExtraMonth,
    checkNightCount,
    checkMonthCount,
    checkSentence,
    checkMarker,
    checkStar,
    checkVisibility,
    checkAnchors,
    checkRecordLists,
    checkRecordNames,
    () => checkRecordings(document, ['groups', '*', 'nights', '*', 'recording'], media, MOST_NAME_BYTES),
  ];
  return checkDocument(document, calendarSchema, checks, (written) =>
    convertCalendar(written, computeFileId(file.path), media),
  );
}

function* checkNames(document: YamlDocument): Generator<Diagnostic> {
  yield* checkUnique(document, 'group', ['groups', '*', 'name']);
  yield* checkUnique(document, 'night', ['groups', '*', 'nights', '*', 'name']);
  yield* checkUnique(document, 'month', ['months', '*', 'name'], ['thirteenth-month', 'name']);
}

/** A list of thirteen months holds the extra one already. */
function* checkExtraMonth(document: YamlDocument): Generator<Diagnostic> {
  const count = [...collect(document.value, ['months', '*'])].length;
  for (const { path } of count > 12 ? collect(document.value, ['thirteenth-month']) : []) {
    const message = `${describePath(path)}: found it beside a list of ${count} months, expected 12 months with it; take the extra month out of \`months\`, or remove \`thirteenth-month\`.`;
    yield createFault(document, path, { rule: 'wrong-value', message, part: 'key' });
  }
}

/** How many nights a calendar may name, and how many it names as a rule. */
const NIGHTS_ALLOWED = [10, 40] as const;
const NIGHTS_AS_A_RULE = [27, 32] as const;

function* checkNightCount(document: YamlDocument): Generator<Diagnostic> {
  const count = [...collect(document.value, ['groups', '*', 'nights', '*'])].length;
  if (count === 0 || isWithin(count, NIGHTS_AS_A_RULE)) return;
  const isAllowed = isWithin(count, NIGHTS_ALLOWED);
  const expected = (isAllowed ? NIGHTS_AS_A_RULE : NIGHTS_ALLOWED).join(' to ');
  const advice = isAllowed
    ? `expected ${expected} as a rule; check that none is missing or doubled.`
    : `expected ${expected}; add or remove nights.`;
  yield createFault(document, ['groups'], {
    rule: 'wrong-value',
    ...(isAllowed && { severity: 'warning' }),
    message: `\`groups\`: found ${count} nights in all, ${advice}`,
    found: `${count}`,
    expected,
    part: 'key',
  });
}

function isWithin(count: number, [least, most]: readonly [number, number]): boolean {
  return count >= least && count <= most;
}

function* checkMonthCount(document: YamlDocument): Generator<Diagnostic> {
  const count = [...collect(document.value, ['months', '*'])].length;
  if (count === 0 || count === 12 || count === 13) return;
  yield createFault(document, ['months'], {
    rule: 'wrong-value',
    message: `\`months\`: found ${count} months, expected 12 or 13; add or remove months.`,
    found: `${count}`,
    expected: '12 or 13',
    part: 'key',
  });
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

function* checkVisibility(document: YamlDocument): Generator<Diagnostic> {
  const [at] = collectTexts(document, ['month-begins', 'at']);
  if (at === undefined || at.text === 'first-crescent') return;
  for (const { path } of collect(document.value, ['month-begins', 'visibility'])) {
    const message = `${describePath(path)}: this belongs to \`at: first-crescent\`, which is not there; remove it.`;
    yield createFault(document, path, { rule: 'wrong-value', message, part: 'key' });
  }
}

function convertCalendar(written: WrittenCalendar, id: string, media: MediaReader): Calendar | undefined {
  const onOrAfter = convertMarker(written['year-begins']['on-or-after']);
  if (onOrAfter === undefined) return undefined;
  const { title, language, keeper, sharing, note, months, sentence } = written;
  const { at, offset = 0, visibility } = written['month-begins'];
  const thirteenthMonth = written['thirteenth-month'];
  return {
    ...{ id, title, language, keeper, sharing, months, sentence },
    ...convertNights(written.groups, media),
    ...(note !== undefined && { note }),
    ...(written['explained-in'] !== undefined && { explainedIn: written['explained-in'] }),
    ...(thirteenthMonth && { thirteenthMonth }),
    dayBegins: written['day-begins'],
    monthBegins: { at, offset, ...(visibility !== undefined && { visibility }) },
    yearBegins: { phase: written['year-begins'].phase, onOrAfter },
    observations: written.observations ?? [],
    announcedMonths: written['announced-months'] ?? [],
  };
}

/** Names and their recordings are kept apart: who looks for a night's name has no use for its bytes. */
function convertNights(
  written: WrittenCalendar['groups'],
  media: MediaReader,
): Pick<Calendar, 'groups' | 'spokenNames'> {
  const spokenNames = new Map<number, Recording>();
  let number = 0;
  const groups = written.map(({ nights, ...group }) => ({
    ...group,
    nights: nights.map(({ recording, ...night }) => {
      number += 1;
      if (recording !== undefined) spokenNames.set(number, convertRecording(recording, media));
      return night;
    }),
  }));
  return { groups, spokenNames };
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
