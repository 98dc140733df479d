import type { MarkupRun } from './collect-runs.ts';
import { type KnownTags, type Markup, readMarkup } from './read-markup.ts';
import { splitWords } from './split-words.ts';

/** A page, taken apart, with its words in one row. */
export interface PageReading {
  readonly markup: Markup;
  /** The words that a reader finds, in order; text that tags part stands at the end once more, parted. */
  readonly words: readonly string[];
  /** How many of the words are the page's own; those after them repeat some. */
  readonly ownWords: number;
  /** The run in which a word stands. @param at Index of the word. */
  runOf(at: number): MarkupRun;
}

/** Parts runs in the row of words: no text holds it. */
const RUN_END = '\u0000';

/** Reads an HTML or SVG file. @param known Tags that were met in other files; new ones are added. */
export function readPage(source: string, known: KnownTags): PageReading {
  const markup = readMarkup(source, known);
  const own = splitRuns(markup.runs);
  const words = markup.parted.length === 0 ? own : [...own, ...splitRuns(markup.parted)];
  // Made when first asked for: on most pages nothing is found.
  let ends: number[] | undefined;
  return {
    markup,
    words,
    ownWords: own.length,
    runOf(at) {
      ends ??= countWords([...markup.runs, ...markup.parted]);
      const index = findRun(ends, at);
      const run = markup.runs[index] ?? markup.parted[index - markup.runs.length];
      if (run === undefined) throw new RangeError(`The page has no word ${at}.`);
      return run;
    },
  };
}

/** Index of the first run that ends behind a word. */
function findRun(ends: readonly number[], at: number): number {
  let low = 0;
  let high = ends.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((ends[middle] ?? 0) > at) high = middle;
    else low = middle + 1;
  }
  return low;
}

function splitRuns(runs: readonly MarkupRun[]): string[] {
  return splitWords(runs.map(({ text }) => text).join(RUN_END));
}

/** For each run, how many words there are up to its end. */
function countWords(runs: readonly MarkupRun[]): number[] {
  let sum = 0;
  return runs.map(({ text }) => {
    sum += splitWords(text).length;
    return sum;
  });
}
