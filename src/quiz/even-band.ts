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

interface Graded {
  readonly hardness: Hardness;
  readonly level: Level;
}

/** Whether items are about equally hard, as {@link drawEvenBand} means it. */
export function isEven(items: readonly Graded[]): boolean {
  const nights = items.map(({ hardness }) => hardness.nights);
  const sides = new Set(items.map(nameSide));
  return sides.size <= 1 && Math.max(...nights) - Math.min(...nights) <= WIDEST_SPREAD;
}

/**
 * Draws items that are about equally hard, in an order of chance: of one level, all with a hurdle or all without, and
 * between the shortest and the longest count at most 3 nights. Where there are not so many alike, the spread is as small
 * as can be; where no such side has enough, they are of one level all the same; and only where no level has enough do
 * levels come together.
 * Every item can be drawn unless too few are like it: the band is laid around one that chance picks.
 * @param count 0 to the number of items; throws RangeError for more.
 */
export function drawEvenBand<Item extends Graded>(items: readonly Item[], count: number, random: Random): Item[] {
  if (count > items.length) throw new RangeError(`Cannot draw ${count} of ${items.length} items.`);
  if (count === 0) return [];
  const bands = listSides(items, count).flatMap((side) => listBands(side, count));
  const narrowest = Math.max(WIDEST_SPREAD, Math.min(...bands.map(({ spread }) => spread)));
  const even = bands.filter(({ spread }) => spread <= narrowest);
  const { side, place } = pick(listPlaces(even), random);
  const around = even.filter((band) => band.side === side && band.from <= place && place < band.to);
  const { from, to } = pick(around, random);
  const others = shuffle([...side.slice(from, place), ...side.slice(place + 1, to)], random);
  return shuffle([...side.slice(place, place + 1), ...others.slice(0, count - 1)], random);
}

/** What may be drawn together, each in order of its counts: the most alike that hold enough. */
function listSides<Item extends Graded>(items: readonly Item[], count: number): Item[][] {
  const sorted = items.toSorted((one, other) => one.hardness.nights - other.hardness.nights);
  for (const name of [nameSide, ({ level }: Graded) => String(level)]) {
    const sides = groupBy(sorted, name).filter((side) => side.length >= count);
    if (sides.length > 0) return sides;
  }
  return [sorted];
}

function nameSide({ hardness, level }: Graded): string {
  return `${level} ${hardness.hurdle}`;
}

function groupBy<Item>(items: readonly Item[], name: (item: Item) => string): Item[][] {
  const groups = new Map<string, Item[]>();
  for (const item of items) {
    const group = groups.get(name(item));
    if (group === undefined) groups.set(name(item), [item]);
    else group.push(item);
  }
  return [...groups.values()];
}

/** Neighbours on a side: those from a place on, up to another that is left out. */
interface Band<Item> {
  readonly side: readonly Item[];
  readonly from: number;
  readonly to: number;
  /** How many nights the counts may differ by. */
  readonly spread: number;
}

/**
 * A band from each count of nights on: as wide as allowed, and wider where that does not hold enough.
 * Bands with too few above them are none.
 */
function listBands<Item extends Graded>(side: readonly Item[], count: number): Band<Item>[] {
  const nights = side.map(({ hardness }) => hardness.nights);
  const bands: Band<Item>[] = [];
  let to = 0;
  for (const [from, start] of nights.entries()) {
    const last = nights[from + count - 1];
    if (last === undefined || nights[from - 1] === start) continue;
    const spread = Math.max(WIDEST_SPREAD, last - start);
    // From band to band the end only moves on.
    while ((nights[to] ?? Number.POSITIVE_INFINITY) <= start + spread) to += 1;
    bands.push({ side, from, to, spread });
  }
  return bands;
}

/** Every place that lies in a band, once. */
function listPlaces<Item>(bands: readonly Band<Item>[]): { side: readonly Item[]; place: number }[] {
  const places: { side: readonly Item[]; place: number }[] = [];
  let last: Band<Item> | undefined;
  for (const band of bands) {
    const from = last?.side === band.side ? Math.max(last.to, band.from) : band.from;
    for (let place = from; place < band.to; place++) places.push({ side: band.side, place });
    last = band;
  }
  return places;
}
