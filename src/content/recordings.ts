import { findLinkFault } from './check-link.ts';
import type { Diagnostic } from './diagnostic.ts';
import { collect, collectTexts, createFault } from './faults.ts';
import type { MediaReader } from './media/media-reader.ts';
import type { WrittenRecording } from './schemas/recording.ts';
import type { Recording } from './types.ts';
import { describePath, quote } from './wording.ts';
import type { YamlDocument } from './yaml-document.ts';

/** Checks the recordings under a pattern of keys: a file, a link or both; the file is read. */
export function* checkRecordings(
  document: YamlDocument,
  pattern: readonly string[],
  media: MediaReader,
  mostBytes: number,
): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, pattern)) {
    if (typeof value !== 'object' || value === null || Array.isArray(value)) continue;
    if (Object.hasOwn(value, 'file') || Object.hasOwn(value, 'link')) continue;
    const expected = '`file`, `link` or both';
    const message = `${describePath(path)}: found no file and no link, expected ${expected}; say where it is heard.`;
    yield createFault(document, path, { rule: 'missing-key', message, expected, part: 'key' });
  }
  for (const { path, text } of collectTexts(document, [...pattern, 'file'])) {
    if (text !== '') yield* media.checkSound(path, text, mostBytes);
  }
  for (const { path, text } of collectTexts(document, [...pattern, 'link'])) {
    const fault = text === '' ? undefined : findLinkFault(text);
    if (fault === undefined) continue;
    const { found, expected, remedy } = fault;
    const message = `${describePath(path)}: found ${quote(found)}, expected ${expected}; ${remedy}.`;
    yield createFault(document, path, { rule: 'wrong-value', message, found, expected });
  }
}

/** A recording that was checked. */
export function convertRecording({ file, link, credit, permission }: WrittenRecording, media: MediaReader): Recording {
  return {
    ...(file !== undefined && { sound: media.requireSound(file) }),
    ...(link !== undefined && { link }),
    credit,
    permission,
  };
}
