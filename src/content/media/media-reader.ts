import type { Diagnostic } from '../diagnostic.ts';
import { createFault } from '../faults.ts';
import { findNearMiss } from '../near-miss.ts';
import type { ContentPicture, ContentSound } from '../types.ts';
import { describePath, quote } from '../wording.ts';
import type { YamlDocument, YamlPath } from '../yaml-document.ts';
import type { AssetKind, ContentAssets } from './content-assets.ts';
import type { MediaFault, Parsed } from './media-fault.ts';
import { MOST_PICTURE_BYTES, parsePicture } from './parse-picture.ts';
import { MOST_RUN_BYTES, parseSound } from './parse-sound.ts';

/** Reads the files that one YAML file names, each once. */
export interface MediaReader {
  /** Reads a picture and tells what is wrong with it; `path` is where it is named. */
  checkPicture(path: YamlPath, file: string): Iterable<Diagnostic>;
  /** Likewise a sound of at most so many bytes. */
  checkSound(path: YamlPath, file: string, mostBytes: number): Iterable<Diagnostic>;
  /** A picture or sound that was checked and found good. @throws Error for any other. */
  requirePicture(file: string): Omit<ContentPicture, 'credit'>;
  requireSound(file: string): ContentSound;
}

/** What came of one file. */
type Entry<Value> = Parsed<Value> & { readonly remarks: readonly MediaFault[] };

const WORDS = {
  images: { one: 'picture', most: 'a smaller picture' },
  sounds: { one: 'sound', most: 'a shorter or smaller recording' },
} as const satisfies Readonly<Record<AssetKind, { one: string; most: string }>>;

/** Opens a reader; nothing is looked at yet. */
export function createMediaReader(document: YamlDocument, assets: ContentAssets): MediaReader {
  const pictures = new Map<string, Entry<Omit<ContentPicture, 'credit'>>>();
  const sounds = new Map<string, Entry<ContentSound>>();
  const tell = (path: YamlPath, kind: AssetKind, file: string, fault: MediaFault, severity: 'error' | 'warning') =>
    describeFault(document, path, file, fault, assets.showPath(kind, file), severity);

  function* check<Value>(
    entries: Map<string, Entry<Value>>,
    [kind, path, file]: readonly [AssetKind, YamlPath, string],
    read: (listed: string) => Entry<Value>,
  ): Generator<Diagnostic> {
    const listed = assets.list(kind).find((name) => name.normalize('NFC') === file);
    if (listed === undefined) {
      yield describeMissing(document, path, kind, file, assets);
      return;
    }
    const entry = entries.get(file) ?? read(listed);
    entries.set(file, entry);
    if (entry.fault !== undefined) yield tell(path, kind, file, entry.fault, 'error');
    for (const remark of entry.remarks) yield tell(path, kind, file, remark, 'warning');
  }

  return {
    checkPicture: (path, file) => check(pictures, ['images', path, file], (listed) => readPicture(assets, listed)),
    *checkSound(path, file, mostBytes) {
      yield* check(sounds, ['sounds', path, file], (listed) => readSound(assets, listed));
      const length = sounds.get(file)?.value?.bytes.length ?? 0;
      if (length > mostBytes) yield tell(path, 'sounds', file, describeSize('sounds', length, mostBytes), 'error');
    },
    requirePicture: (file) => requireGood(pictures.get(file)?.value, file),
    requireSound: (file) => requireGood(sounds.get(file)?.value, file),
  };
}

function requireGood<Value>(value: Value | undefined, file: string): Value {
  if (value === undefined) throw new Error(`${file} was not read, or not found good.`);
  return value;
}

function readPicture(assets: ContentAssets, file: string): Entry<Omit<ContentPicture, 'credit'>> {
  const read = assets.read('images', file, MOST_PICTURE_BYTES);
  if ('sizeBytes' in read) return { fault: describeSize('images', read.sizeBytes, MOST_PICTURE_BYTES), remarks: [] };
  const { value, fault } = parsePicture(read.bytes);
  if (fault) return { fault, remarks: [] };
  const { widthPx, heightPx, ending, remarks } = value;
  const packName = `picture-${shorten(assets.digest(read.bytes))}${ending}`;
  return { value: { file, packName, widthPx, heightPx, bytes: read.bytes }, remarks };
}

function readSound(assets: ContentAssets, file: string): Entry<ContentSound> {
  const read = assets.read('sounds', file, MOST_RUN_BYTES);
  if ('sizeBytes' in read) return { fault: describeSize('sounds', read.sizeBytes, MOST_RUN_BYTES), remarks: [] };
  const { value, fault } = parseSound(read.bytes);
  if (fault) return { fault, remarks: [] };
  const packName = `recording-${shorten(assets.digest(read.bytes))}${value.ending}`;
  return { value: { file, packName, mediaType: value.mediaType, bytes: read.bytes }, remarks: [] };
}

/** Sixty-four bits: two files of a pack share a name by accident never. The name tells nothing of what the file holds. */
function shorten(digest: string): string {
  return digest.slice(0, 16);
}

function describeSize(kind: AssetKind, sizeBytes: number, mostBytes: number): MediaFault {
  const remedy = `save ${WORDS[kind].most}`;
  return { found: `is ${writeSize(sizeBytes)} large`, expected: `at most ${writeSize(mostBytes)}`, remedy };
}

/** Rounded up, so that what is too large never reads as if it were not. */
function writeSize(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1000)} kB` : `${Math.ceil(bytes / 100_000) / 10} MB`;
}

function describeFault(
  document: YamlDocument,
  path: YamlPath,
  file: string,
  { found, expected, remedy, place }: MediaFault,
  shownPath: string,
  severity: 'error' | 'warning',
): Diagnostic {
  const message = `${describePath(path)}: ${quote(file)} ${found}, expected ${expected}; ${remedy}.`;
  const fault = createFault(document, path, { rule: 'media-file', severity, message, found, expected });
  return place === undefined ? fault : { ...fault, related: { file: shownPath, ...place } };
}

function describeMissing(
  document: YamlDocument,
  path: YamlPath,
  kind: AssetKind,
  file: string,
  assets: ContentAssets,
): Diagnostic {
  const near = findNearFile(file, assets.list(kind));
  const advice = near === undefined ? 'put the file there' : `did you mean ${quote(near)}?`;
  const folder = assets.showPath(kind, '').replace(/\/$/, '');
  const message = `${describePath(path)}: there is no ${WORDS[kind].one} ${quote(file)} in ${quote(folder)}; ${advice}${near === undefined ? '.' : ''}`;
  return createFault(document, path, { rule: 'missing-file', message, found: file });
}

/** A file of a like name, or of the same name in another folder. */
function findNearFile(file: string, files: readonly string[]): string | undefined {
  const nameOf = (path: string) => path.slice(path.lastIndexOf('/') + 1);
  const sameName = files.filter((each) => nameOf(each) === nameOf(file));
  return findNearMiss(file, files) ?? (sameName.length === 1 ? sameName[0] : undefined);
}
