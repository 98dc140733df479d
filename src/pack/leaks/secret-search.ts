import { decodeEscapes, decodePercents, findBase64 } from './decode-text.ts';
import { createPhraseSearch } from './phrase-search.ts';
import { listByteRuns, readLatin1 } from './read-bytes.ts';
import type { Secret } from './secret.ts';
import { splitWords } from './split-words.ts';

/** A secret in a text that nobody reads on a page. */
export interface UnseenSecret {
  readonly secret: Secret;
  /** How it is written there, for messages; absent where it is plain to read. */
  readonly coding?: 'base64' | 'percent' | 'escapes';
}

/** A search for all secrets of a week. */
export interface SecretSearch {
  /** Calls back for each secret that stands in a row of words, with the place of its first word. */
  find(words: readonly string[], found: (secret: Secret, at: number) => void): void;
  /**
   * Secrets in a text that stands on no page, in any usual coding, with or without the spaces between their words;
   * short ones too where they are the whole of it.
   */
  findUnseen(text: string): UnseenSecret[];
  /** Whether a text in small letters is all of a secret, however short. */
  isWhole(text: string): boolean;
}

/** Codings in codings are undone so far. */
const MOST_CODINGS = 3;

/** Prepares the search; a text is then read once, however many secrets there are. */
export function createSecretSearch(secrets: readonly Secret[]): SecretSearch {
  const told = secrets.filter(({ telling }) => telling !== 'alone');
  const glued = told.filter(({ telling, words }) => telling === 'unseen' && words.length > 1);
  const phrases = createPhraseSearch([
    ...told.map(({ words }) => words),
    ...glued.map(({ words }) => [words.join('')]),
  ]);
  const whole = new Map<string, Secret>();
  for (const secret of secrets) keepFirst(whole, secret.words.join(' '), secret);
  const find: SecretSearch['find'] = (words, found) =>
    phrases.find(words, (index, at) => {
      const secret = told[index] ?? glued[index - told.length];
      if (secret !== undefined) found(secret, at);
    });
  return {
    find,
    isWhole: (text) => whole.has(text),
    findUnseen(text) {
      const found = new Map<Secret, UnseenSecret>();
      for (const { words, coding, isPart } of listReadings(text, MOST_CODINGS)) {
        const add = (secret: Secret) => void keepFirst(found, secret, { secret, ...(coding && { coding }) });
        find(words, add);
        const same = isPart === true ? undefined : whole.get(words.join(' '));
        if (same !== undefined) add(same);
      }
      return leaveOutParts([...found.values()]);
    },
  };
}

/** Leaves out answers that stand in a sentence of the key: they are told with the sentence. */
export function leaveOutParts<Found extends { readonly secret: Secret }>(found: readonly Found[]): Found[] {
  const texts = found.map(({ secret }) => ` ${secret.words.join(' ')} `);
  return found.filter((_, index) => {
    const text = texts[index] ?? '';
    return !texts.some((other) => other.length > text.length && other.includes(text));
  });
}

function keepFirst<Key, Value>(map: Map<Key, Value>, key: Key, value: Value): void {
  if (!map.has(key)) map.set(key, value);
}

interface Reading {
  readonly words: readonly string[];
  readonly coding?: 'base64' | 'percent' | 'escapes';
  /** True where it is text among other bytes, which may be text by chance. */
  readonly isPart?: boolean;
}

/** A text as it stands, and with each coding undone that may be in it. */
function* listReadings(text: string, most: number): Generator<Reading> {
  yield { words: splitWords(text) };
  for (const { coding, decoded, isPart } of most === 0 ? [] : listDecoded(text)) {
    for (const inner of listReadings(decoded, most - 1)) {
      yield { words: inner.words, coding, isPart: isPart || inner.isPart === true };
    }
  }
}

interface Decoded {
  readonly coding: NonNullable<Reading['coding']>;
  readonly decoded: string;
  readonly isPart: boolean;
}

function* listDecoded(text: string): Generator<Decoded> {
  if (text.includes('\\')) yield { coding: 'escapes', decoded: decodeEscapes(text), isPart: false };
  const plain = decodePercents(text);
  if (plain !== undefined) yield { coding: 'percent', decoded: plain, isPart: false };
  for (const bytes of findBase64(text)) {
    const runs = listByteRuns(bytes, readLatin1(bytes));
    const decoded = runs.map((run) => run.text).join('\n');
    if (decoded !== '') yield { coding: 'base64', decoded, isPart: runs[0]?.byteLength !== bytes.length };
  }
}
