import type { Point } from '../smooth-outline.ts';
import { body, figureBox } from './body.ts';
import type { Vector } from './vector.ts';
import type { HandFrame } from './wrist.ts';

/** From where the leader is seen: by the class, or from behind, as one sees one's own hands. */
export type Standpoint = 'front' | 'behind';

/** Gives where a joint is seen. Limbs are seen straight on, so that the two standpoints are exact mirror images. */
export function seePoint(from: Standpoint, point: Vector): Point {
  return [figureBox.width / 2 + (from === 'front' ? point[0] : -point[0]), point[1]];
}

/**
 * Hands are seen a little from above, and from below when they are over the head: palms that lie flat would be lines
 * else. Fingers that point at the viewer or away are seen from higher up, and more so when the hand stands on its edge.
 * In radians; chosen by eye.
 */
const lookDown = 0.45;
const lookUp = -0.42;
const lookAlong = 0.28;
const lookAlongEdge = 0.31;

/** Gives what a direction in a hand looks like: x and y of the picture, and towards the viewer. */
export type HandSight = (direction: Vector) => Vector;

/** Finds how a hand is seen, by where its wrist is and how it is turned. */
export function findHandSight(from: Standpoint, wrist: Vector, hand: HandFrame): HandSight {
  const turn = from === 'front' ? 1 : -1;
  const raise = Math.abs(hand.fingers[2]) * (lookAlong + lookAlongEdge * hand.palm[0] ** 2);
  const angle = wrist[1] < body.head.y - 20 ? lookUp - raise : lookDown + raise;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  return ([x, y, z]) => [turn * x, y * cos + turn * z * sin, turn * z * cos - y * sin];
}
