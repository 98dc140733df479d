import type { Level } from './questions/question-instance.ts';
import { pick, type Random, shuffle } from './random.ts';

/** How much a question asks of a learner, to be held against others of its kind. */
export interface Hardness {
  /** Nights to count from the one that is known; 0 for all of a kind that needs no counting. */
  readonly nights: number;
  /** Whether the count meets more than one night after another: a month's end, a name left out or said twice. */
  readonly hurdle: boolean;
}

/** Counts that differ by up to so many nights take a class about the same time. Our own choice. */
const WIDEST_SPREAD = 3;

/** Whether items are about equally hard, as {@link drawEvenBand} means it. */
export function isEven(items: readonly Graded[]): boolean {
  const nights = items.map(({ hardness }) => hardness.nights);
  const sides = new Set(items.map(nameSide));
  return sides.size <= 1 && Math.max(...nights) - Math.min(...nights) <= WIDEST_SPREAD;
}

interface Graded {
  readonly hardness: Hardness;
  readonly level: Level;
}

/** Items of two sides are never equally hard: another level, or a count that meets something in the way. */
function nameSide({ hardness, level }: Graded): string {
  return `${level} ${hardness.hurdle}`;
}

/**
 * Draws items that are about equally hard, in an order of chance: of one level, all with a hurdle or all without, and between the
 * shortest and the longest count at most 3 nights. Where there are not so many alike, the spread is as small as can be,
 * and only where neither kind has enough do both come together.
 * Every item can be drawn unless too few are like it: the band is laid around one that chance picks.
 * @param count 0 to the number of items; throws RangeError for more.
 */
export function drawEvenBand<Item extends Graded>(items: readonly Item[], count: number, random: Random): Item[] {
  if (count > items.length) throw new RangeError(`Cannot draw ${count} of ${items.length} items.`);
  if (count === 0) return [];
  const sides = [...new Set(items.map(nameSide))].map((side) => items.filter((item) => nameSide(item) === side));
  const enough = sides.filter((side) => side.length >= count);
  const bands = (enough.length > 0 ? enough : [items]).flatMap((side) => listBands(side, count));
  const narrowest = Math.max(WIDEST_SPREAD, Math.min(...bands.map(({ spread }) => spread)));
  const even = bands.filter(({ spread }) => spread <= narrowest);
  const anchor = pick(
    items.filter((item) => even.some((band) => band.items.includes(item))),
    random,
  );
  const band = pick(
    even.filter((each) => each.items.includes(anchor)),
    random,
  );
  const others = shuffle(
    band.items.filter((item) => item !== anchor),
    random,
  );
  return shuffle([anchor, ...others.slice(0, count - 1)], random);
}

/**
 * A band from each count of nights on: as wide as allowed, and wider where that does not hold enough.
 * Bands with too few above them are none.
 */
function listBands<Item extends Graded>(items: readonly Item[], count: number): { items: Item[]; spread: number }[] {
  const sorted = items.toSorted((one, other) => one.hardness.nights - other.hardness.nights);
  const starts = [...new Set(sorted.map(({ hardness }) => hardness.nights))];
  return starts.flatMap((start) => {
    const above = sorted.filter(({ hardness }) => hardness.nights >= start);
    const last = above[count - 1];
    if (last === undefined) return [];
    const spread = Math.max(WIDEST_SPREAD, last.hardness.nights - start);
    return [{ items: above.filter(({ hardness }) => hardness.nights <= start + spread), spread }];
  });
}
