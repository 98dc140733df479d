import { requireCivilZone } from '../calendar/civil.ts';
import type { CivilDate, InstantMs, Observation } from '../calendar/rules.ts';
import { renderObservation } from '../content/add-observation.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import { collectTexts, createFault } from '../content/faults.ts';
import type { SourceFile } from '../content/types.ts';
import { describePath, quote } from '../content/wording.ts';
import { parseYamlFile, type YamlDocument, type YamlPath } from '../content/yaml-document.ts';

/** An observation as it stands in a school's file. */
export interface ObservedEntry {
  readonly document: YamlDocument;
  readonly path: YamlPath;
  /** From 1. */
  readonly line: number;
  readonly night: string;
}

function listEntries(file: SourceFile): readonly (ObservedEntry & { readonly date: CivilDate })[] {
  const document = parseYamlFile(file);
  const nights = collectTexts(document, ['observations', '*', 'night']);
  return collectTexts(document, ['observations', '*', 'date']).map(({ text: date, path: datePath }) => {
    const path = datePath.slice(0, -1);
    const night = nights.find((each) => each.path[1] === path[1])?.text ?? '';
    return { document, path, line: document.placeOf(path).line, date, night };
  });
}

/** The observation of a date. */
export function findEntryOf(file: SourceFile, date: CivilDate): ObservedEntry | undefined {
  return listEntries(file).find((entry) => entry.date === date);
}

/** The last observation of a file that has one. */
export function requireLastEntry(file: SourceFile): ObservedEntry {
  const last = listEntries(file).at(-1);
  if (last === undefined) throw new Error(`${file.path} has no observation.`);
  return last;
}

/** Says that a date has another night already. */
export function describeTaken({ document, path, night }: ObservedEntry, observation: Observation): Diagnostic {
  const message = `${describePath(path)}: the date ${quote(observation.date)} has ${quote(night)} already, and a date has one night; take this entry out first if it is wrong.`;
  return createFault(document, path, {
    rule: 'observation',
    message,
    found: night,
    expected: observation.night,
  });
}

/** Says that the text of a file gives no place for another entry. */
export function describeNoPlace(file: SourceFile, observation: Observation): Diagnostic {
  const message = `There is no plain place for another observation in the way this file is written; add it by hand: \`- ${renderObservation(observation)}\`.`;
  return createFault(parseYamlFile(file), ['observations'], { rule: 'observation', message, part: 'key' });
}

/** Says that a night is still to come; the clock of a computer may be wrong, so that this is no more than a remark. */
export function describeNotBegun(
  { document, path, night }: ObservedEntry,
  date: CivilDate,
  beginsMs: InstantMs,
  timeZone: string,
): Diagnostic {
  const begins = requireCivilZone(timeZone).renderLocal(beginsMs);
  const message = `${describePath(path)}: ${quote(night)} on ${quote(date)} begins only at ${quote(begins)} by the clock of this computer, expected a night that was seen; take the entry out if the date is wrong, and list months announced ahead under \`announced-months\`.`;
  return createFault(document, path, { rule: 'observation', severity: 'warning', message, found: date });
}

/** Says that more must be seen or announced before the night of an entry can be told. */
export function describeNotKnown({ document, path }: ObservedEntry, date: CivilDate, why: string): Diagnostic {
  const message = `${describePath(path)}: which night ${quote(date)} is cannot be told by this entry alone. ${why}`;
  return createFault(document, path, { rule: 'observation', severity: 'warning', message, found: date });
}
