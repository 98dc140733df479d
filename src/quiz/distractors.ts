import type { RunNight } from '../calendar/almanac-types.ts';
import { foldName } from './fold-text.ts';

/** Why a learner might take a wrong night for the right one. `mirror`: the like phase in the other half of the month. */
export type DistractorReason = 'too-early' | 'too-late' | 'mirror' | 'not-reached';

/** A wrong option: the name of a night, and the slip it stands for. */
export interface Distractor {
  readonly name: string;
  readonly reason: DistractorReason;
}

/** Wrong options beside the one right option. */
const WRONG_OPTIONS = 3;

/**
 * The sets of wrong options for a question whose answer is a night, each set complete in itself. The right night stands
 * first, in the middle or last among its neighbours, depending on the set: so its place in the run does not give it away.
 * All names of a set differ from each other, from `right` and from `avoid` as {@link foldName} folds them.
 * @param run All nights of the calendar, in order; the run is taken as a ring.
 * @param avoid Nights that may not be options, such as the one in the question.
 * @param notReached Nights that are passed over just before `right`; the first of them is in every set.
 * @returns One to three sets of up to 3; none when {@link hasDistractors} says no.
 */
export function listDistractorSets(
  run: readonly RunNight[],
  right: RunNight,
  avoid: readonly RunNight[] = [],
  notReached: readonly RunNight[] = [],
): Distractor[][] {
  const taken = new Set([right, ...avoid].map(foldName));
  const trap = takeNights(notReached.slice(0, 1), 'not-reached', taken, 1);
  const ring = [...run.slice(right.number), ...run.slice(0, right.number - 1)];
  const near = WRONG_OPTIONS - trap.length - 1;
  const late = takeNights(ring, 'too-late', taken, near);
  const early = takeNights(ring.toReversed(), 'too-early', taken, near);
  const far = takeFarNight(run, right, ring, taken);
  const sets = Array.from({ length: near + 1 }, (_, after) => [
    ...trap,
    ...early.slice(0, near - after),
    ...late.slice(0, after),
    ...far,
  ]);
  const most = Math.max(...sets.map((set) => set.length));
  return sets.filter((set) => set.length > 0 && set.length === most);
}

/** Whether the calendar has any name to offer as a wrong option: {@link listDistractorSets} would not come back empty. */
export function hasDistractors(run: readonly RunNight[], right: RunNight, avoid: readonly RunNight[] = []): boolean {
  const taken = new Set([right, ...avoid].map(foldName));
  return run.some((night) => !taken.has(foldName(night)));
}

/** Up to `count` nights whose names are not taken yet; they are taken from then on. */
function takeNights(
  nights: readonly RunNight[],
  reason: DistractorReason,
  taken: Set<string>,
  count: number,
): Distractor[] {
  const found: Distractor[] = [];
  for (const night of nights) {
    if (found.length >= count) break;
    const folded = foldName(night);
    if (taken.has(folded)) continue;
    taken.add(folded);
    found.push({ name: night.name, reason });
  }
  return found;
}

/** The mirror night; where that is too near the right one, the free night furthest from it. */
function takeFarNight(
  run: readonly RunNight[],
  right: RunNight,
  ring: readonly RunNight[],
  taken: Set<string>,
): Distractor[] {
  const mirror = takeNights(run.slice(-right.number).slice(0, 1), 'mirror', taken, 1);
  if (mirror.length > 0) return mirror;
  const half = Math.ceil(ring.length / 2);
  const later = takeNights(ring.slice(0, half).toReversed(), 'too-late', taken, 1);
  return later.length > 0 ? later : takeNights(ring.slice(half), 'too-early', taken, 1);
}
