import type { SourcePlace } from '../../content/diagnostic.ts';
import type { FilePart, Unpack } from './file-part.ts';
import { listFileParts } from './file-parts.ts';
import { findPersonalTraces, type PersonalTrace } from './find-personal.ts';
import type { Leak } from './leak.ts';
import { listByteRuns, readLatin1 } from './read-bytes.ts';
import { type LeakMaker, sayLeak } from './say-leak.ts';
import type { Secret } from './secret.ts';
import { leaveOutParts, type SecretSearch, type UnseenSecret } from './secret-search.ts';

/** What is known of a file that is no page. */
export interface MediaSetting {
  readonly search: SecretSearch;
  readonly unpack: Unpack;
  readonly maker: LeakMaker;
  /** The author's own file, where it is one. */
  readonly related?: SourcePlace;
  /**
   * Names of the calendar, folded, that the file may hold: a picture of a night, shown on a handout, may be called by
   * it, though it were better not.
   */
  readonly mayName: ReadonlySet<string>;
}

/** A finding about a secret in a file that is no page. @param where Such as `in its GIF comment`. */
export function describeFound(
  { secret, coding }: UnseenSecret,
  at: number,
  where: string,
  setting: MediaSetting,
): Leak {
  const isNamed = setting.mayName.has(secret.words.join(' '));
  const place = coding === undefined ? where : `${where}, coded (${coding})`;
  const { maker, related } = setting;
  return {
    severity: isNamed ? 'warning' : 'error',
    at,
    message: sayLeak(secret, place, maker),
    ...(related === undefined ? {} : { related }),
  };
}

/** Searches a picture, a sound, an archive or any other file that is no page: whatever reads as text in it. */
export function searchBytes(bytes: Uint8Array, setting: MediaSetting): Leak[] {
  const latin1 = readLatin1(bytes);
  const parts = listFileParts(bytes, latin1, setting.unpack);
  const texts: PlacedText[] = listStretches(bytes.length, parts).flatMap(({ from, to, where }) =>
    listByteRuns(bytes.subarray(from, to), latin1.slice(from, to)).map(({ text, at }) => ({
      text,
      at: from + at,
      where,
    })),
  );
  for (const { name, from, unpacked } of parts) {
    if (unpacked !== undefined) texts.push({ text: unpacked, at: from, where: `in its ${name}` });
  }
  return [...searchTexts(texts, setting), ...listPersonal(findPersonalTraces(latin1, parts), setting)];
}

interface PlacedText {
  readonly text: string;
  readonly at: number;
  /** Such as `in its GIF comment`. */
  readonly where: string;
}

/** Each finding once: what is packed and what is plain to read in a part are looked at both. */
function searchTexts(texts: readonly PlacedText[], setting: MediaSetting): Leak[] {
  // Pictures hold many short runs of letters by chance: one look at all of them is enough where nothing is found.
  if (setting.search.findUnseen(texts.map(({ text }) => text).join('\n')).length === 0) return [];
  const found = new Map<string, { readonly secret: Secret; readonly leak: Leak }>();
  for (const { text, at, where } of texts) {
    for (const unseen of setting.search.findUnseen(text)) {
      const leak = describeFound(unseen, at, where, setting);
      if (!found.has(leak.message)) found.set(leak.message, { secret: unseen.secret, leak });
    }
  }
  return leaveOutParts([...found.values()]).map(({ leak }) => leak);
}

interface Stretch {
  readonly from: number;
  readonly to: number;
  readonly where: string;
}

/** The parts of a file and what is between them: two texts that touch are two. */
function listStretches(length: number, parts: readonly FilePart[]): Stretch[] {
  const stretches: Stretch[] = [];
  let at = 0;
  for (const { from, to, name } of parts.toSorted((one, other) => one.from - other.from)) {
    if (from > at) stretches.push({ from: at, to: from, where: 'in its bytes' });
    stretches.push({ from, to, where: `in its ${name}` });
    at = Math.max(at, to);
  }
  if (at < length) stretches.push({ from: at, to: length, where: 'in its bytes' });
  return stretches;
}

/** Findings about people and places that a file tells of. */
export function listPersonal(traces: readonly PersonalTrace[], { related }: MediaSetting): Leak[] {
  return traces.map(({ what, at }) => ({
    severity: 'warning',
    at,
    message: `This file tells ${what} to whoever gets the pack; expected a picture or a sound and nothing else; save it without such data`,
    ...(related === undefined ? {} : { related }),
  }));
}
