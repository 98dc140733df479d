import type { Diagnostic } from './diagnostic.ts';
import { checkOneOf, collect, collectTexts, createFault } from './faults.ts';
import { findNearMiss } from './near-miss.ts';
import { findStar, STAR_NAMES } from './star-catalogue.ts';
import { describeChoice, describePath, quote } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** Where a calendar says what a year is measured from. */
const MARKER = ['year-begins', 'on-or-after'];

/** What `rising` brings with it. */
const RISING_KEYS = ['star-altitude', 'sun-altitude', 'right-ascension', 'declination'] as const;

function isThere(document: YamlDocument, key: string): boolean {
  return [...collect(document.value, [...MARKER, key])].length > 0;
}

/** A year has one marker, and only a star has altitudes and a place in the sky. */
export function* checkMarker(document: YamlDocument): Generator<Diagnostic> {
  yield* checkOneOf(document, MARKER, ['date', 'solstice', 'equinox', 'rising']);
  if (isThere(document, 'rising')) return;
  for (const key of RISING_KEYS) {
    for (const { path } of collect(document.value, [...MARKER, key])) {
      const message = `${describePath(path)}: this belongs to \`rising\`, which is not there; remove it.`;
      yield createFault(document, path, { rule: 'wrong-value', message, part: 'key' });
    }
  }
}

/** A star needs its two altitudes, and a place in the sky: its own, or that of the catalogue. */
export function* checkStar(document: YamlDocument): Generator<Diagnostic> {
  for (const { text, path } of collectTexts(document, [...MARKER, 'rising'])) {
    const isPlaced = isThere(document, 'right-ascension') || isThere(document, 'declination');
    const needed = RISING_KEYS.filter((key) => isPlaced || key.endsWith('-altitude'));
    for (const key of needed) if (!isThere(document, key)) yield describeMissing(document, key);
    if (!isPlaced && findStar(text) === undefined) yield describeUnknownStar(document, path, text);
  }
}

function describeMissing(document: YamlDocument, key: (typeof RISING_KEYS)[number]): Diagnostic {
  const unit = key === 'right-ascension' ? 'hours' : 'degrees';
  const message = `${describePath([...MARKER, key])} is missing; expected a number of ${unit}; add it.`;
  return createFault(document, MARKER, { rule: 'missing-key', message, part: 'key' });
}

function describeUnknownStar(document: YamlDocument, path: YamlPath, name: string): Diagnostic {
  const near = findNearMiss(name, STAR_NAMES);
  const advice = near === undefined ? '' : `did you mean ${quote(near)}? `;
  const message = `${describePath(path)}: the star ${quote(name)} is not in the catalogue; ${advice}Expected ${describeChoice(STAR_NAMES)}, or any name with \`right-ascension\` and \`declination\`.`;
  return createFault(document, path, { rule: 'unknown-reference', message, found: name });
}
