import { pick, type Random, shuffle } from './random.ts';

/** The place of the right option among the options of each question, from 0; undefined where there is none to place. */
export type RightPlaces = readonly (number | undefined)[];

/**
 * Places for the right options of a paper. Among questions with as many options every place comes about equally often:
 * the counts differ by one at most. Apart from that, and from what is to be avoided, every place is equally likely.
 * @param counts How many options each question has; undefined where its right option has no place to be told.
 * @param avoid A place that each question should not have, such as that on the paper of the table beside; it is had all
 *   the same only where the counts would differ by more else.
 */
export function spreadPlaces(counts: RightPlaces, avoid: RightPlaces, random: Random): RightPlaces {
  const places = new Map<number, number>();
  for (const count of new Set(counts)) {
    if (count === undefined) continue;
    const questions = [...counts.keys()].filter((question) => counts[question] === count);
    const deck = dealDeck(count, questions.length, random);
    const avoided = questions.map((question) => avoid[question]);
    for (const index of deck.keys()) if (deck[index] === avoided[index]) moveAway(index, deck, avoided, count, random);
    for (const [index, question] of questions.entries()) places.set(question, deck[index] ?? 0);
  }
  return counts.map((_, question) => places.get(question));
}

/** A shuffled deck in which every place comes as often as any other, or once more. */
function dealDeck(count: number, size: number, random: Random): number[] {
  const rounds = Array.from({ length: Math.ceil(size / count) }, () => shuffle([...Array(count).keys()], random));
  return shuffle(rounds.flat().slice(0, size), random);
}

/** Changes a place of the deck that is to be avoided with another's, or for one that comes less often. */
function moveAway(index: number, deck: number[], avoided: RightPlaces, count: number, random: Random): void {
  const place = deck[index];
  const partners = [...deck.keys()].filter((other) => deck[other] !== place && avoided[other] !== place);
  if (partners.length > 0) {
    const partner = pick(partners, random);
    [deck[index], deck[partner]] = [deck[partner] ?? 0, place ?? 0];
    return;
  }
  const countUses = (wanted: number | undefined) => deck.filter((each) => each === wanted).length;
  const rarer = [...Array(count).keys()].filter((other) => countUses(other) < countUses(place));
  if (rarer.length > 0) deck[index] = pick(rarer, random);
}
