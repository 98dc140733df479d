import type { Direction, HandPose } from '../../content/types.ts';
import { outwardX, type Side } from './body.ts';
import { dot, type Vector } from './vector.ts';
import { type HandFrame, makeFrame } from './wrist.ts';

/** Gives the direction that a word means for a hand: `in` and `out` are towards and away from the middle of the body. */
function aim(side: Side, direction: Direction): Vector {
  const out = outwardX[side];
  switch (direction) {
    case 'up':
      return [0, -1, 0];
    case 'down':
      return [0, 1, 0];
    case 'in':
      return [-out, 0, 0];
    case 'out':
      return [out, 0, 0];
    case 'front':
      return [0, 0, 1];
    case 'back':
      return [0, 0, -1];
  }
}

/**
 * Gives a hand's axes from the words of its pose. No hand can have palm and fingers on one line: there the palm's word
 * is kept, and the fingers point to the front or up.
 */
export function aimHand(side: Side, { palm, fingers }: Pick<HandPose, 'palm' | 'fingers'>): HandFrame {
  const out = aim(side, palm);
  const ahead = aim(side, fingers);
  const flat = palm === 'up' || palm === 'down';
  return makeFrame(side, dot(out, ahead) === 0 ? ahead : aim(side, flat ? 'front' : 'up'), out);
}
