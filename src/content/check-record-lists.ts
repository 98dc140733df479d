import type { Diagnostic } from './diagnostic.ts';
import { checkReference, checkUnique, collect, collectTexts, createFault } from './faults.ts';
import { cleanText } from './schemas/parts.ts';
import { describePath, quote } from './wording.ts';
import type { YamlDocument, YamlPath } from './yaml-document.ts';

/** An observation as written: where, and which night. */
interface WrittenNight {
  readonly path: YamlPath;
  readonly night: string | undefined;
}

/** A date may bear one night, and a month be announced once; calendar and school files are checked alike. */
export function* checkRecordLists(document: YamlDocument): Generator<Diagnostic> {
  yield* checkUnique(document, 'date', ['announced-months', '*']);
  const first = new Map<string, WrittenNight>();
  for (const { path, value } of collect(document.value, ['observations', '*'])) {
    const date = findText(value, 'date');
    if (date === undefined) continue;
    const written = { path, night: findText(value, 'night') };
    const before = first.get(date);
    if (before === undefined) first.set(date, written);
    else yield describeRepeat(document, date, before, written);
  }
}

function findText(entry: unknown, key: string): string | undefined {
  const [found] = collect(entry, [key]);
  return typeof found?.value === 'string' ? cleanText(found.value) : undefined;
}

function describeRepeat(document: YamlDocument, date: string, first: WrittenNight, { path, night }: WrittenNight) {
  const what = first.night === night ? 'is there twice' : 'has two nights';
  const message = `${describePath(path)}: ${quote(date)} ${what}, first at ${describePath(first.path)}; keep the one that is right.`;
  return createFault(document, path, { rule: 'observation', message, found: date, related: first.path });
}

/** A calendar's observations must be of its own nights. */
export function* checkRecordNames(document: YamlDocument): Generator<Diagnostic> {
  const names = collectTexts(document, ['groups', '*', 'nights', '*', 'name']).map(({ text }) => text);
  yield* checkReference(document, ['observations', '*', 'night'], 'night', names);
}
