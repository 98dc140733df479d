import type { DrawnAnswer, DrawnQuestion } from './draw-question.ts';
import { readText } from './fold-text.ts';
import { createRandom, type Random, shuffle } from './random.ts';
import { spreadPlaces } from './spread-places.ts';

/**
 * In which order a paper shows what belongs to a question: the first one shown is the drawn one with the first number.
 * Options are numbered with the right ones first, then the wrong ones; items of an order and right sides of pairs as drawn.
 */
export type Placing = readonly number[];

/**
 * The placing of each question of a paper. Among its questions with one right option and as many options, right ones
 * stand at each place about equally often: the counts differ by one at most. What is to be put in order or matched is
 * never shown solved. Apart from that every order is equally likely.
 *
 * The order hangs on the seed and on all that the key says and the paper does not, workings and reasons among it. So
 * whoever has the seed and the program, but not the key, cannot work the places out; at most they can see whether a whole
 * key that they guessed, word for word, is the right one.
 * @param before Placings of the paper before, empty where it asks something else: where both ask the same, the right
 *   option stands elsewhere, unless the counts would differ by more then.
 */
export function placeAnswers(
  drawn: readonly DrawnQuestion[],
  seed: string,
  before: readonly Placing[] = [],
): Placing[] {
  const random = createRandom(`${seed}\n${drawn.map(tellKey).join('\n')}`);
  const counts = drawn.map(({ answer }) => countSingleChoice(answer));
  const rightPlaces = spreadPlaces(counts, before.map(findRightPlace), random);
  return drawn.map(({ answer }, question) => placeAnswer(answer, rightPlaces[question], random));
}

/** How many options a question with one right option has; undefined for any other question. */
function countSingleChoice(answer: DrawnAnswer): number | undefined {
  return answer.kind === 'options' && answer.right.length === 1 ? 1 + answer.wrong.length : undefined;
}

function findRightPlace(placing: Placing): number | undefined {
  return placing.length > 0 ? placing.indexOf(0) : undefined;
}

/** What the key says of a question and the paper does not; a list, so that words cannot run into each other. */
function tellKey({ working, hint, answer }: DrawnQuestion): string {
  return JSON.stringify([readText(working), hint, listAnswerTexts(answer)]);
}

function listAnswerTexts(answer: DrawnAnswer): (string | string[])[] {
  switch (answer.kind) {
    case 'options':
      return [answer.right.map(readText), answer.wrong.map(({ means }) => readText(means))];
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

function placeAnswer(answer: DrawnAnswer, rightPlace: number | undefined, random: Random): Placing {
  switch (answer.kind) {
    case 'options':
      return placeOptions(answer.right.length + answer.wrong.length, rightPlace, random);
    case 'order':
      return shuffleUnsolved(answer.items.length, random);
    case 'match':
      return shuffleUnsolved(answer.pairs.length, random);
    default:
      return [];
  }
}

function placeOptions(count: number, rightPlace: number | undefined, random: Random): Placing {
  const numbers = [...Array(count).keys()];
  if (rightPlace === undefined) return shuffle(numbers, random);
  const others = shuffle(numbers.slice(1), random);
  return [...others.slice(0, rightPlace), 0, ...others.slice(rightPlace)];
}

/** Every order equally likely but the right one, which would be no question. */
function shuffleUnsolved(count: number, random: Random): Placing {
  for (;;) {
    const order = shuffle([...Array(count).keys()], random);
    if (count < 2 || order.some((number, place) => number !== place)) return order;
  }
}
