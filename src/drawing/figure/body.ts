import type { Vector } from './vector.ts';

/** The box that every figure is drawn in, in drawing units; 0,0 is its top left corner. */
export const figureBox = { width: 300, height: 324 } as const;

/** A hand, by whose it is: the leader's own left and right. */
export type Side = 'left' | 'right';

/** Where the leader's left and right lie for the class, which looks at the leader from the front. */
export const outwardX: Readonly<Record<Side, 1 | -1>> = { left: 1, right: -1 };

/**
 * Measures of the half figure, in drawing units; x from the middle of the body. Chosen by eye: a head a little large
 * for the body, as a child's is, arms a little short, hands a little larger than life so that they can be read.
 */
export const body = {
  head: { y: 94 },
  shoulder: { x: 42, y: 155, radius: 13 },
  upperArm: 62,
  forearm: 56,
  elbowRadius: 10,
  wristRadius: 5.2,
} as const;

/** How the leader is drawn: standing, or sitting at a table. */
export type Posture = 'standing' | 'seated';

/** The table of who sits, in drawing units: it hides the body from its edge down, and hands stay above it. */
export const table = { halfWidth: 128, top: 264, thickness: 8 } as const;

/** Gives the place of a shoulder joint. */
export function shoulderOf(side: Side): Vector {
  return [outwardX[side] * body.shoulder.x, body.shoulder.y, 0];
}
