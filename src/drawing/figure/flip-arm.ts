import type { Point } from '../smooth-outline.ts';
import { figureBox } from './body.ts';
import type { Limb } from './limb.ts';
import type { SeenArm } from './see-gesture.ts';
import type { SeenHand } from './see-hand.ts';

/** What is drawn of an arm. */
export type DrawnArm = Pick<SeenArm, 'upper' | 'fore' | 'hand'>;

/** Gives an arm as it is seen in a mirror that stands in the middle of the figure box. */
export function flipArm({ upper, fore, hand }: DrawnArm): DrawnArm {
  return { upper: flipLimb(upper), fore: flipLimb(fore), hand: flipHand(hand) };
}

function flipPoint([x, y]: Point): Point {
  return [figureBox.width - x, y];
}

function flipLimb(limb: Limb): Limb {
  return { ...limb, from: flipPoint(limb.from), to: flipPoint(limb.to) };
}

function flipHand(hand: SeenHand): SeenHand {
  const [cuff, end] = hand.spine;
  return {
    ...hand,
    flat: hand.flat.map(flipPoint),
    spine: [flipPoint(cuff), flipPoint(end)],
    digits: hand.digits.map((digit) => ({ ...digit, points: digit.points.map(flipPoint) })),
    crease: hand.crease.map(flipPoint),
    ridge: hand.ridge.map(flipPoint),
    middle: flipPoint(hand.middle),
  };
}
