import type { ElementContent } from 'hast';
import type { DrawnAnswer, DrawnQuestion } from './draw-question.ts';
import { readText } from './fold-text.ts';
import { createRandom, type Random, shuffle } from './random.ts';

/**
 * In which order a paper shows what belongs to a question: the first one shown is the drawn one with the first number.
 * Options are numbered with the right ones first, then the wrong ones; items of an order and right sides of pairs as drawn.
 */
export type Placing = readonly number[];

/** How often right places are dealt anew to find a paper that differs from its neighbour's. Our own choice. */
const TRIES = 12;

/**
 * The placing of each question of a paper. Among its questions with one right option and as many options, right ones
 * stand at each place about equally often: the counts differ by one at most. What is to be put in order or matched is
 * never shown solved.
 *
 * The order hangs on the seed and on all that the key of the paper says, workings among it. So whoever knows the seed
 * and the program, but not the key, cannot work the places out. It does not hang on the order in which options were
 * written, which is often "the right one first".
 * @param before Placings of the paper before: where both ask the same, the right one stands elsewhere if it can be had.
 */
export function placeAnswers(drawn: readonly DrawnQuestion[], seed: string, before?: readonly Placing[]): Placing[] {
  const random = createRandom(`${seed}\n${drawn.map(tellKey).join('\n')}`);
  const rightPlaces = dealRightPlaces(drawn, random, before);
  return drawn.map(({ answer }, question) => placeAnswer(answer, rightPlaces[question], random));
}

/** All that the key says of a question, for the seed; a list, so that words cannot run into each other. */
function tellKey({ prompt, working, hint, answer }: DrawnQuestion): string {
  return JSON.stringify([readText(prompt), readText(working), hint, listAnswerTexts(answer)]);
}

function listAnswerTexts(answer: DrawnAnswer): (string | string[])[] {
  switch (answer.kind) {
    case 'options':
      return [
        answer.right.map(readText),
        answer.wrong.flatMap(({ content, means }) => [readText(content), readText(means)]),
      ];
    case 'line':
      return [answer.accepted.map(readText), answer.slips.map(({ means }) => readText(means))];
    case 'order':
      return answer.items.map(readText);
    case 'match':
      return answer.pairs.map(({ left, right }) => [readText(left), readText(right)]);
    case 'lines':
      return answer.rubric.map(({ words }) => words);
    case 'disc':
      return [answer.description];
  }
}

/** The place of the right option, from 0, of each question that has one right option; undefined for others. */
function dealRightPlaces(
  drawn: readonly DrawnQuestion[],
  random: Random,
  before: readonly Placing[] | undefined,
): (number | undefined)[] {
  const counts = drawn.map(({ answer }) => countSingleChoice(answer));
  let best: (number | undefined)[] = [];
  let fewest = Number.POSITIVE_INFINITY;
  for (let attempt = 0; attempt < TRIES && fewest > 0; attempt++) {
    const places = spreadPlaces(counts, random);
    const clashes = places.filter((place, question) => place !== undefined && before?.[question]?.indexOf(0) === place);
    if (clashes.length < fewest) {
      best = places;
      fewest = clashes.length;
    }
  }
  return best;
}

/** How many options a question with one right option has; undefined for any other question. */
function countSingleChoice(answer: DrawnAnswer): number | undefined {
  return answer.kind === 'options' && answer.right.length === 1 ? 1 + answer.wrong.length : undefined;
}

/** For questions of each count of options, a shuffled deck in which every place comes as often as any other, or once more. */
function spreadPlaces(counts: readonly (number | undefined)[], random: Random): (number | undefined)[] {
  const decks = new Map<number, number[]>();
  for (const count of new Set(counts)) {
    if (count === undefined) continue;
    const needed = counts.filter((each) => each === count).length;
    const rounds = Array.from({ length: Math.ceil(needed / count) }, () => shuffle([...Array(count).keys()], random));
    decks.set(count, shuffle(rounds.flat().slice(0, needed), random));
  }
  return counts.map((count) => (count === undefined ? undefined : decks.get(count)?.pop()));
}

function placeAnswer(answer: DrawnAnswer, rightPlace: number | undefined, random: Random): Placing {
  switch (answer.kind) {
    case 'options':
      return placeOptions(answer, rightPlace, random);
    case 'order':
      return shuffleUnsolved(answer.items, random);
    case 'match':
      return shuffleUnsolved(
        answer.pairs.map(({ right }) => right),
        random,
      );
    default:
      return [];
  }
}

function placeOptions(
  { right, wrong }: DrawnAnswer & { kind: 'options' },
  rightPlace: number | undefined,
  random: Random,
): Placing {
  const contents = [...right, ...wrong.map(({ content }) => content)];
  const byWords = sortByWords(contents);
  if (rightPlace === undefined) return shuffle(byWords, random);
  const others = shuffle(
    byWords.filter((number) => number !== 0),
    random,
  );
  return [...others.slice(0, rightPlace), 0, ...others.slice(rightPlace)];
}

/** Every order equally likely but the right one, which would be no question. */
function shuffleUnsolved(contents: readonly (readonly ElementContent[])[], random: Random): Placing {
  const byWords = sortByWords(contents);
  for (;;) {
    const order = shuffle(byWords, random);
    if (contents.length < 2 || order.some((number, place) => number !== place)) return order;
  }
}

/** Numbers of contents in the order of code units of their trees; no two of a question are the same. */
function sortByWords(contents: readonly (readonly ElementContent[])[]): number[] {
  return contents
    .map((content, number) => ({ number, words: JSON.stringify(content) }))
    .toSorted((one, other) => (one.words < other.words ? -1 : one.words > other.words ? 1 : 0))
    .map(({ number }) => number);
}
