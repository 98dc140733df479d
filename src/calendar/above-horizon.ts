import { MS_PER_DAY } from './day-number.ts';
import type { InstantMs, Place } from './rules.ts';
import { findRiseSet, isUp } from './sky.ts';

/** Where the Sun's centre stands at the end of civil twilight: degrees above the horizon, airless (definition). */
export const CIVIL_TWILIGHT_DEGREES = -6;

/** A stretch of time; the end is open. */
export interface Stretch {
  readonly fromMs: InstantMs;
  readonly untilMs: InstantMs;
}

/**
 * The stretches during which the Sun or the Moon is above the horizon, in order. Whether it is up at first is told by
 * which of rise and set comes next; where neither comes, as for a Moon that circles low all day, by where its upper limb is.
 * @param within Where to look; a stretch cut off by its ends is cut there.
 */
export function listUp(body: 'sun' | 'moon', place: Place, within: Stretch): readonly Stretch[] {
  const findNext = (event: 'rise' | 'set', fromMs: InstantMs) =>
    findRiseSet(body, event, place, fromMs, (within.untilMs - fromMs) / MS_PER_DAY);
  let riseMs = findNext('rise', within.fromMs);
  let setMs = findNext('set', within.fromMs);
  const isUpAtFirst =
    riseMs === null && setMs === null
      ? isUp(body, place, within.fromMs)
      : setMs !== null && (riseMs === null || setMs < riseMs);
  const stretches: Stretch[] = [];
  if (isUpAtFirst) stretches.push({ fromMs: within.fromMs, untilMs: setMs ?? within.untilMs });
  while (riseMs !== null) {
    setMs = findNext('set', riseMs);
    stretches.push({ fromMs: riseMs, untilMs: setMs ?? within.untilMs });
    riseMs = setMs === null ? null : findNext('rise', setMs);
  }
  return stretches;
}

/** The longest stretch; of equally long ones the first. */
export function findLongest(stretches: readonly Stretch[]): Stretch | null {
  let longest: Stretch | null = null;
  for (const stretch of stretches) {
    if (!longest || stretch.untilMs - stretch.fromMs > longest.untilMs - longest.fromMs) longest = stretch;
  }
  return longest;
}
