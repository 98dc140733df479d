import { pick, type Random, shuffle } from './random.ts';

/**
 * A place for the right option of each single choice of a paper, 0 for the first, spread so that no place is used
 * more often than the others as far as the numbers of options allow. Questions take their turn in random order, so the
 * last question of a paper cannot be told from those before it.
 * @param optionCounts How many options each single choice has, 1 or more, in the order of the paper.
 */
export function spreadRightPlaces(optionCounts: readonly number[], random: Random): number[] {
  const uses = new Map<number, number>();
  const places = optionCounts.map(() => 0);
  for (const [question, count] of shuffle([...optionCounts.entries()], random)) {
    const open = Array.from({ length: count }, (_, place) => place);
    const fewest = Math.min(...open.map((place) => uses.get(place) ?? 0));
    const place = pick(
      open.filter((candidate) => (uses.get(candidate) ?? 0) === fewest),
      random,
    );
    uses.set(place, fewest + 1);
    places[question] = place;
  }
  return places;
}
