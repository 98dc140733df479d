import { findNearMiss } from './near-miss.ts';
import { quote } from './wording.ts';

/** The keys of a hand, in the order in which a line names them. */
export const HAND_KEYS = ['shape', 'at', 'palm', 'fingers'] as const;
type HandKey = (typeof HAND_KEYS)[number];

/** What a line says of a hand: any text for any of the keys. */
export type HandWords = Partial<Record<HandKey, string>>;

/** Words that say nothing, as in "open hand at the chest, palm facing up". */
const FILLERS: ReadonlySet<string> = new Set(['a', 'the', 'hand', 'hands', 'facing']);
/** Words before what each key holds. */
const SIGNPOSTS: ReadonlyMap<string, HandKey> = new Map([
  ['at', 'at'],
  ['palm', 'palm'],
  ['palms', 'palm'],
  ['fingers', 'fingers'],
]);

/**
 * Reads a hand that is written as a line: `open at chest, palm up, fingers in`. The parts come in any order, and commas
 * may be left out; whether the words are known, and all of them there, is for the schema to see.
 * @returns The words by key, and the rest of a sentence for each part that is not understood.
 */
export function parseHandLine(line: string): { readonly words: HandWords; readonly faults: readonly string[] } {
  const words = new Map<HandKey, string[]>();
  const faults: string[] = [];
  for (const part of line.split(/[,;]/)) {
    const said = part.split(/\s+/).filter((word) => word !== '' && !FILLERS.has(word.toLowerCase()));
    const { read, isStrange } = readPart(said, !words.has('shape'));
    if (isStrange) faults.push(describeStranger(part.trim(), said));
    for (const [key, value] of read) {
      if (words.has(key)) faults.push(`found ${quote(key)} twice, expected it once; keep the one that is meant.`);
      else words.set(key, value);
    }
  }
  const filled = [...words].filter(([, value]) => value.length > 0);
  return { words: Object.fromEntries(filled.map(([key, value]) => [key, value.join('-')])), faults };
}

/** What a part between commas says, as far as it is understood. */
function readPart(said: readonly string[], mayBeShape: boolean): { read: [HandKey, string[]][]; isStrange: boolean } {
  const read: [HandKey, string[]][] = [];
  let isStrange = false;
  for (const word of said) {
    const [key, value] = read.at(-1) ?? [];
    const signpost = SIGNPOSTS.get(word.toLowerCase());
    // A mistyped word still tells what the part is about: then the rest of it is no second fault.
    const meant = signpost ?? (value === undefined ? SIGNPOSTS.get(findSignpost(word) ?? '') : undefined);
    isStrange ||= meant !== signpost;
    // "fingers pointing up": here the word is no shape.
    if (key === 'fingers' && word === 'pointing') continue;
    if (meant !== undefined) read.push([meant, []]);
    else if (value === undefined && mayBeShape) read.push(['shape', [word]]);
    else if (value === undefined || key === 'shape') return { read, isStrange: true };
    else value.push(word);
  }
  return { read, isStrange };
}

function findSignpost(word: string): string | undefined {
  return findNearMiss(word, ['at', 'palm', 'fingers']);
}

function describeStranger(part: string, said: readonly string[]): string {
  const near = said.flatMap((word) => findSignpost(word) ?? [])[0];
  const expected = 'expected a line like `open at chest, palm up, fingers in`';
  return `${quote(part)} is not understood, ${expected}; ${near === undefined ? 'change it or take it out.' : `did you mean ${quote(near)}?`}`;
}
