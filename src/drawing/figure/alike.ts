import type { Gesture, GestureSet } from '../../content/types.ts';
import { compareInk, type InkMap, mapInk } from './ink-map.ts';
import { seeGesture } from './see-gesture.ts';

/**
 * Two gestures look alike when less than this share of their ink lies apart, by `compareInk` on maps of the facing view.
 * Found on the two demonstration sets, looked at by eye at a height of 3 cm. Within each of them no two are nearer than
 * 0.27, and the nearest are told apart at a second glance; `cover` of the one and `fermer-les-volets` of the other are the
 * same, at 0. Of some 2000 gestures that differ in one word from one of a set, those below are hardly told apart: seven
 * in ten with another shape of the hand, one in seven with another palm, fingers or move, hardly any with another place.
 * Hands that do it on the other side are always far apart.
 */
const alikeBelow = 0.25;

/** Two gestures of a set, by their keys. */
interface AlikePair {
  readonly first: string;
  readonly second: string;
}

/** Worked out once for each set: for the warning of it, and for each quiz that shows gestures. */
const known = new WeakMap<GestureSet, readonly AlikePair[]>();

/**
 * Gives the pairs of gestures of a set that look alike when they are drawn, by their keys, in the order of the file.
 * Two with the same picture file are alike; one with a picture is not compared with one that is drawn.
 */
export function listAlikeGestures(set: GestureSet): readonly AlikePair[] {
  const pairs = known.get(set) ?? findAlikePairs(set);
  known.set(set, pairs);
  return pairs;
}

function findAlikePairs(set: GestureSet): AlikePair[] {
  const entries = Object.entries(set.gestures).map(([key, gesture]) => ({ key, look: findLook(gesture) }));
  return entries.flatMap(({ key: first, look }, index) =>
    entries
      .slice(index + 1)
      .flatMap(({ key: second, look: other }) => (isAlike(look, other) ? [{ first, second }] : [])),
  );
}

function findLook(gesture: Gesture): string | InkMap {
  return gesture.picture === undefined ? mapInk(seeGesture(gesture, 'front', 'standing')) : gesture.picture.packName;
}

function isAlike(one: string | InkMap, other: string | InkMap): boolean {
  if (typeof one === 'string' || typeof other === 'string') return one === other;
  return compareInk(one, other, alikeBelow) < alikeBelow;
}
