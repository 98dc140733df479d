import type { ElementContent } from 'hast';
import { createRandom, shuffle } from './random.ts';

/** Where options are put in order: the seed of the quiz, the question's number, and the paper, both from 0. */
export interface OrderPlace {
  readonly seed: string;
  readonly question: number;
  readonly paper: number;
  /** Whether all papers ask this question with the same options. */
  readonly shared: boolean;
}

/**
 * The order of a question's options on a paper. It hangs on the words of the options and on the place alone: not on which
 * of them is right, nor on the order they were written in, which is often "the right one first". So whoever knows the
 * seed and the program learns nothing from it.
 * Where papers share the options, each option stands at each place once in as many papers as there are options: the
 * right one does too, whichever it is, and neighbouring papers never have it at the same place.
 */
export function orderOptions<Option extends { readonly content: readonly ElementContent[] }>(
  options: readonly Option[],
  { seed, question, paper, shared }: OrderPlace,
): Option[] {
  const byWords = sortByWords(options);
  if (!shared) return shuffle(byWords, createRandom(`${seed}\nquestion ${question + 1}\npaper ${paper + 1}`));
  const round = Math.floor(paper / options.length);
  const random = createRandom(`${seed}\nquestion ${question + 1}\nround ${round + 1}`);
  const first = shuffle(byWords, random);
  const turns = shuffle([...options.keys()], random);
  const turn = turns[paper % options.length] ?? 0;
  return [...first.slice(turn), ...first.slice(0, turn)];
}

/** In the order of code units of their trees; no two options of a question are the same. */
function sortByWords<Option extends { readonly content: readonly ElementContent[] }>(
  options: readonly Option[],
): Option[] {
  return options
    .map((option) => ({ option, words: JSON.stringify(option.content) }))
    .toSorted((one, other) => (one.words < other.words ? -1 : one.words > other.words ? 1 : 0))
    .map(({ option }) => option);
}
