import type { Almanac } from '../../calendar/almanac-types.ts';
import type { CalendarRules } from '../../calendar/rules.ts';

/** A first crescent is seen a night or two after that of the conjunction: so much both halves are moved. */
const CRESCENT_SHIFT = 3;

/**
 * The place in the run of the night with the like shape of Moon in the other half of the month, from 0. Night 1 and the
 * last night lie on both sides of the phase that opens the month, unless the rule moves them. Exact to a night or so, as
 * months are.
 * @param place From 0.
 */
export function findMirror({ run, rules }: Almanac, place: number): number {
  const { length } = run;
  const mirror = (length - 1 - place - countShift(rules)) % length;
  return (mirror + length) % length;
}

function countShift({ monthBegins: { at, offset } }: CalendarRules): number {
  return 2 * offset + (at === 'first-crescent' ? CRESCENT_SHIFT : 0);
}
