import type { ElementContent } from 'hast';
import { readText } from '../../quiz/fold-text.ts';
import type { LetteredContent } from '../../quiz/model.ts';
import { holdsPicture } from './holds-picture.ts';

/** How lettered things stand on a paper. It hangs on all of them together, so that none stands out. */
export interface Arrangement {
  readonly columns: 1 | 2 | 3 | 4;
  readonly pictures: boolean;
}

/** Letters that stand beside box and letter in a quarter of a printed line, and in half of one: measured, rounded down. */
const LETTERS_A_QUARTER = 12;
const LETTERS_A_HALF = 28;

/** From so many lines on, in half the width, words are easier to read over the whole width. By eye. */
const MOST_LINES_A_HALF = 2;

/** How the options, items or matches of a question stand. */
export function arrangeLettered(lettered: readonly LetteredContent[]): Arrangement {
  return arrangeContents(lettered.map(({ content }) => content));
}

/** The same for things without letters. */
export function arrangeContents(contents: readonly (readonly ElementContent[])[]): Arrangement {
  const fewest = spread(contents.length);
  if (contents.some(holdsPicture)) return { columns: fewest, pictures: true };
  const longest = Math.max(0, ...contents.map((content) => readText(content).length));
  if (longest <= LETTERS_A_QUARTER) return { columns: fewest, pictures: false };
  return { columns: longest <= LETTERS_A_HALF * MOST_LINES_A_HALF ? 2 : 1, pictures: false };
}

/** As many as fit in a row of four or less, with the last row not left with one alone. */
function spread(count: number): 1 | 2 | 3 | 4 {
  if (count === 1 || count === 2 || count === 3) return count;
  return count === 5 || count === 6 ? 3 : 4;
}

/** The classes of a list that stands so. */
export function nameArrangement({ columns, pictures }: Arrangement): string[] {
  return [`by-${columns}`, ...(pictures ? ['pictures'] : [])];
}
