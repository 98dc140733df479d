import type { SourcePlace } from '../../content/diagnostic.ts';
import type { SourceFile } from '../../content/types.ts';
import { countPhrase, findPhrase } from './find-phrase.ts';
import { splitWords } from './split-words.ts';

/** The part of a lesson that learners get. */
export type LearnersPart = 'handout' | 'group-quiz';

/** The words of a part of a lesson, and the line of each. */
interface PartWords {
  readonly words: string[];
  /** Indices, from 0. */
  readonly lines: number[];
}

const parts = new WeakMap<SourceFile, Map<LearnersPart, PartWords>>();

/**
 * Finds where an author has written a sentence for learners: in a handout, or in a quiz beside what the key says.
 * Undefined where it is not written out there, as when a directive says it.
 * @param phrase Folded, as `splitWords` gives them.
 */
export function traceSentence(
  source: SourceFile | undefined,
  phrase: readonly string[],
  part: LearnersPart,
): SourcePlace | undefined {
  if (source === undefined) return undefined;
  const { words, lines } = readPart(source, part);
  const [at] = findPhrase(words, phrase);
  const line = at === undefined ? undefined : lines[at];
  if (line === undefined) return undefined;
  const text = source.text.split(LINE_END)[line] ?? '';
  return { file: source.path, line: line + 1, column: findColumn(text, phrase[0] ?? '') };
}

const LINE_END = /\r\n|\r|\n/;

function readPart(source: SourceFile, part: LearnersPart): PartWords {
  const known = parts.get(source) ?? new Map<LearnersPart, PartWords>();
  parts.set(source, known);
  const read = known.get(part);
  if (read !== undefined) return read;
  const all = source.text.split(LINE_END);
  const made: PartWords = { words: [], lines: [] };
  for (const line of listLines(all, part)) {
    for (const word of splitWords(all[line] ?? '')) {
      made.words.push(word);
      made.lines.push(line);
    }
  }
  known.set(part, made);
  return made;
}

/** Whether an author has written the words as the answer to a question. */
export function isWrittenAnswer({ text }: SourceFile, words: readonly string[]): boolean {
  return text.split(/[\r\n]+/).some((line) => line.includes('::answer') && countPhrase(splitWords(line), words) > 0);
}

/** Indices of the lines between the fences; in a quiz without what only the key gets. */
function* listLines(lines: readonly string[], part: LearnersPart): Generator<number> {
  /** Colons of the fence that is open. */
  let fence = 0;
  for (let index = 0; index < lines.length; index += 1) {
    const line = lines[index] ?? '';
    const [, colons = '', name = ''] = /^\s*(:{3,})\s*([a-z-]*)/.exec(line) ?? [];
    if (fence === 0) {
      if (name === part) fence = colons.length;
    } else if (name === '' && colons.length >= fence) fence = 0;
    else if (part === 'handout' || !/^\s*(?:>|::(?:answer|question)\b)/.test(line)) yield index;
  }
}

/** Counted from 1; where the word begins, or the line where it is written in another way. */
function findColumn(line: string, word: string): number {
  const at = line.toLowerCase().indexOf(word);
  return (at === -1 ? line.search(/\S/) : at) + 1;
}
