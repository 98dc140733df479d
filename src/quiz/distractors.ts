/**
 * Where a wrong option stands beside the right one, on a ring such as the run of nights. `across`: far off, but easily
 * taken for the right one, such as the mirror night; `near-across`: beside that. `not-reached`: passed over this time.
 */
export type DistractorReason =
  | 'just-before'
  | 'just-after'
  | 'earlier'
  | 'later'
  | 'across'
  | 'near-across'
  | 'not-reached';

/** A wrong option: its place on the ring, from 0, and the slip it stands for. */
export interface Distractor {
  readonly place: number;
  readonly reason: DistractorReason;
}

/** What wrong options are chosen from: things in order, the last of which is followed by the first. */
export interface OptionRing {
  /** The texts of all things, folded. */
  readonly texts: readonly string[];
  /** The place of the right one, from 0. */
  readonly right: number;
  /** Folded texts that may not be options, such as the one in the question. */
  readonly avoid?: readonly string[];
  /** The place easily taken for the right one, from 0. */
  readonly across: number;
  /** Places that are passed over; the first of them is in every set. */
  readonly notReached?: readonly number[];
}

/** Wrong options beside the one right option. */
export const WRONG_OPTIONS = 3;

/** Steps between the nearest of two pairs that do not look like a row. */
const APART = 2;

/**
 * The sets of wrong options, each complete in itself. Its neighbours stand around the right one in every way: first,
 * second, third or last of a row of four; or as one of a pair, with another pair across. Whoever sees the four
 * without knowing the answer finds each of them as likely as any other by its place.
 * All texts of a set differ from each other, from the right one and from `avoid`.
 * @returns Sets of 3, or of as many as there are; none when {@link hasDistractors} says no.
 */
export function listDistractorSets(ring: OptionRing): Distractor[][] {
  const taken = new Set([ring.texts[ring.right] ?? '', ...(ring.avoid ?? [])]);
  const others = listOthers(ring, taken);
  const rows = others.length <= WRONG_OPTIONS ? [others] : listRows(others.toReversed(), others);
  const near = rows.map((places) => places.map((place) => ({ place, reason: findReason(ring, place) })));
  const sets = [...near, ...listPairs(ring, taken)];
  return dropRepeats(keepLargest(sets.map((set) => putTrap(ring, set, taken))));
}

/** Whether there is any text to offer as a wrong option. */
export function hasDistractors({ texts, right, avoid = [] }: OptionRing): boolean {
  const taken = new Set([texts[right] ?? '', ...avoid]);
  return texts.some((text) => !taken.has(text));
}

/**
 * Rows of neighbours, in which the right one would stand last, third, second and first.
 * @param early Those before it, the nearest first.
 * @param late Those after it, the nearest first.
 * @returns The longest rows there are, of at most 3.
 */
export function listRows<Item>(early: readonly Item[], late: readonly Item[]): Item[][] {
  const rows = Array.from({ length: WRONG_OPTIONS + 1 }, (_, after) => [
    ...early.slice(0, WRONG_OPTIONS - after),
    ...late.slice(0, after),
  ]);
  return keepLargest(rows);
}

/** The sets with the most items; none that are empty. */
export function keepLargest<Item>(sets: readonly Item[][]): Item[][] {
  const most = Math.max(...sets.map((set) => set.length));
  return sets.filter((set) => set.length > 0 && set.length === most);
}

/** All places that may be options, onward from the right one; of those with the same text the one nearest to it. */
function listOthers({ texts, right }: OptionRing, taken: ReadonlySet<string>): number[] {
  const nearest = new Map<string, number>();
  for (let away = 1; away <= texts.length / 2; away++) {
    for (const place of [wrap(right - away, texts.length), wrap(right + away, texts.length)]) {
      const text = texts[place] ?? '';
      if (!taken.has(text) && !nearest.has(text)) nearest.set(text, place);
    }
  }
  const onward = (place: number) => wrap(place - right, texts.length);
  return [...nearest.values()].sort((one, other) => onward(one) - onward(other));
}

function wrap(place: number, count: number): number {
  return ((place % count) + count) % count;
}

/** What the thing at a place is to the right one. */
export function findReason({ texts, right, across, notReached }: OptionRing, place: number): DistractorReason {
  if (notReached?.includes(place)) return 'not-reached';
  const onward = wrap(place - right, texts.length);
  if (onward === 1) return 'just-after';
  if (onward === texts.length - 1) return 'just-before';
  if (place === across) return 'across';
  return onward <= texts.length / 2 ? 'later' : 'earlier';
}

/** The right one and a neighbour, and the same across: neither pair is likelier than the other. */
function listPairs(ring: OptionRing, taken: ReadonlySet<string>): Distractor[][] {
  const { texts, right, across } = ring;
  const countSteps = (one: number, other: number) =>
    Math.min(wrap(one - other, texts.length), wrap(other - one, texts.length));
  return [-1, 1].flatMap((side): Distractor[][] => {
    const near = wrap(right + side, texts.length);
    const nearAcross = wrap(across - side, texts.length);
    const gaps = [right, near].flatMap((place) => [countSteps(place, across), countSteps(place, nearAcross)]);
    if (Math.min(...gaps) < APART) return [];
    const found = [near, across, nearAcross].map((place) => texts[place] ?? '');
    if (found.some((text) => taken.has(text)) || new Set(found).size < found.length) return [];
    return [
      [
        { place: near, reason: findReason(ring, near) },
        { place: across, reason: findReason(ring, across) },
        { place: nearAcross, reason: ring.notReached?.includes(nearAcross) ? 'not-reached' : 'near-across' },
      ],
    ];
  });
}

/** What goes first where a trap needs a place in a set. */
const LEAST_TELLING: readonly DistractorReason[] = ['near-across', 'earlier', 'later', 'across'];

/** Puts the first place that is passed over into a set which lacks it. */
function putTrap({ texts, notReached }: OptionRing, set: Distractor[], taken: ReadonlySet<string>): Distractor[] {
  const trap = notReached?.find((place) => !taken.has(texts[place] ?? ''));
  if (trap === undefined) return set;
  const others = set.filter(({ place }) => texts[place] !== texts[trap]);
  const goes = LEAST_TELLING.map((reason) => others.findLast((each) => each.reason === reason)).find(Boolean);
  const kept = others.length < WRONG_OPTIONS ? others : others.filter((each) => each !== (goes ?? others.at(-1)));
  return [{ place: trap, reason: 'not-reached' }, ...kept];
}

function dropRepeats(sets: readonly Distractor[][]): Distractor[][] {
  const seen = new Set<string>();
  return sets.filter((set) => {
    const key = set
      .map(({ place }) => place)
      .sort((one, other) => one - other)
      .join();
    return !seen.has(key) && seen.add(key);
  });
}
