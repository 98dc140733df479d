import { drawEvenBand, isEven } from './even-band.ts';
import type { QuestionInstance } from './questions/question-instance.ts';
import { type Random, shuffle } from './random.ts';
import { type PaperSoFar, shareOut } from './share-out.ts';

/**
 * An instance a paper for one question. All differ where there are enough, and are of one level and about equally hard
 * where there are enough of those; then none is seen twice in the room, if that can be had too.
 * @param pool All that would do.
 * @param taken What other questions of the kind ask on any paper.
 * @returns In the order of the papers; undefined where a paper asks all of them already.
 */
export function dealHand(
  pool: readonly QuestionInstance[],
  taken: ReadonlySet<string>,
  papers: readonly PaperSoFar[],
  random: Random,
): QuestionInstance[] | undefined {
  const drawn = drawAlike(pool, taken, papers.length, random);
  const levels = new Set(drawn.map(({ level }) => level));
  const others = sortByLikeness(
    shuffle(
      pool.filter((instance) => !drawn.includes(instance)),
      random,
    ),
    drawn,
    taken,
  );
  const alike = others.filter(({ level }) => levels.has(level));
  const rest = others.filter(({ level }) => !levels.has(level));
  return shareOut(drawn, alike, rest, papers);
}

/** As many as there are papers, or all different ones where there are fewer; no two ask the same. */
function drawAlike(
  pool: readonly QuestionInstance[],
  taken: ReadonlySet<string>,
  count: number,
  random: Random,
): QuestionInstance[] {
  const lists = [pool.filter(({ asks }) => !taken.has(asks)), pool];
  const ofOneLevel = lists
    .filter((list) => countLargestLevel(list) >= count)
    .map((list) => drawEvenBand(list, count, random));
  const best = ofOneLevel.find(isEven) ?? ofOneLevel[0];
  if (best !== undefined) return best;
  const different = lists.map((list) => keepDifferent(list, random));
  const enough = different.find(({ length }) => length >= count);
  return enough === undefined ? (different[1] ?? []) : drawEvenBand(enough, count, random);
}

/** How many different instances of one level there are at most. */
export function countLargestLevel(instances: readonly QuestionInstance[]): number {
  const counts = new Map<number, number>();
  for (const { level } of instances) counts.set(level, (counts.get(level) ?? 0) + 1);
  return Math.max(0, ...counts.values());
}

/** One of each that ask the same at several levels, whichever chance picks, in an order of chance. */
function keepDifferent(instances: readonly QuestionInstance[], random: Random): QuestionInstance[] {
  return [...new Map(shuffle(instances, random).map((instance) => [instance.asks, instance])).values()];
}

/** Those not seen in the room first, and of these the ones that ask for about as much as those drawn. */
function sortByLikeness(
  others: readonly QuestionInstance[],
  drawn: readonly QuestionInstance[],
  taken: ReadonlySet<string>,
): QuestionInstance[] {
  const [first] = drawn;
  if (first === undefined) return [...others];
  const middle = drawn.reduce((sum, { hardness }) => sum + hardness.nights, 0) / drawn.length;
  const measure = ({ asks, hardness }: QuestionInstance) => [
    Number(taken.has(asks)),
    Number(hardness.hurdle !== first.hardness.hurdle),
    Math.abs(hardness.nights - middle),
  ];
  return others
    .map((instance) => ({ instance, measures: measure(instance) }))
    .toSorted((one, other) => compareInTurn(one.measures, other.measures))
    .map(({ instance }) => instance);
}

/** The first difference decides. */
function compareInTurn(one: readonly number[], other: readonly number[]): number {
  return one.map((value, index) => value - (other[index] ?? 0)).find((difference) => difference !== 0) ?? 0;
}
