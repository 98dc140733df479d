import type { Point } from '../smooth-outline.ts';
import { type Arm, wristToMiddle } from './arm.ts';
import { findHandSight, type Standpoint, seePoint } from './camera.ts';
import {
  creaseBones,
  type DigitBones,
  type DrawnShape,
  findDigits,
  flatBones,
  palmEnd,
  ridgeBones,
} from './hand-shape.ts';
import { widths } from './marks.ts';
import { add, scale, type Vector } from './vector.ts';

/** A finger or thumb as seen. */
export interface SeenDigit {
  readonly points: readonly Point[];
  readonly width: number;
  /** How near its tip is to the viewer. */
  readonly near: number;
  /** True when it lies over the flat of the hand, false when the flat hides its root. */
  readonly over: boolean;
  /** True when no line parts it from the flat. */
  readonly open: boolean;
}

/** A hand as seen. */
export interface SeenHand {
  readonly shape: DrawnShape;
  /** Which side is seen: a palm is left white, a back is solid, a hand on its edge is white with a heavy line along its back. */
  readonly face: 'palm' | 'back' | 'edge';
  /** Round the flat, from the thumb's side of the wrist to the other. */
  readonly flat: readonly Point[];
  /** The flat's middle, from a point in the forearm to the end of the palm. */
  readonly spine: readonly [cuff: Point, end: Point];
  /** Fingers and thumb, the farthest first. */
  readonly digits: readonly SeenDigit[];
  readonly crease: readonly Point[];
  readonly ridge: readonly Point[];
  readonly middle: Point;
}

/** A hand shows its palm or back from this share of a full view on; at less it is on its edge. */
const showsFaceFrom = 0.25;
/** A palm shows its crease from this share of a full view on. */
const showsCreaseFrom = 0.8;
/** How far a digit must stand out before the flat to lie over it, in drawing units. */
const standsOutFrom = 3.5;

/** Works out how a hand looks. */
export function seeHand(arm: Arm, shape: DrawnShape, from: Standpoint): SeenHand {
  const sight = findHandSight(from, arm.wrist, arm.hand);
  const [x, y] = seePoint(from, arm.wrist);
  const see = ([ahead, beside, out]: Vector): Vector =>
    sight(add(add(scale(arm.hand.fingers, ahead), arm.hand.thumb, beside), arm.hand.palm, out));
  const place = (bone: Vector): Point => {
    const seen = see(bone);
    return [x + seen[0], y + seen[1]];
  };
  const shown = sight(arm.hand.palm)[2];
  // A hand that rests stays light, so that it does not ask to be looked at.
  const isTurned = shape !== 'resting' && Math.abs(shown) > showsFaceFrom;
  const face = isTurned ? (shown > 0 ? 'palm' : 'back') : 'edge';
  const digits = findDigits(shape).map((bones) => {
    const near = see(bones.points.at(-1) ?? palmEnd)[2];
    const over = liesOver(bones, shape, face, shown, near - see([15, 0, 0])[2]);
    const width = bones.thumb ? widths.thumb : widths.finger;
    return { points: bones.points.map(place), width, near, over, open: bones.thumb ? face !== 'back' : bones.straight };
  });
  return {
    shape,
    face,
    flat: flatBones.map(place),
    spine: [findCuff(from, arm), place(palmEnd)],
    digits: digits.sort((one, other) => one.near - other.near),
    crease: shown > showsCreaseFrom && !isFolded(shape) ? creaseBones.map(place) : [],
    ridge: face === 'edge' && shape !== 'resting' ? ridgeBones.map(place) : [],
    middle: place([wristToMiddle, 0, 0]),
  };
}

function isFolded(shape: DrawnShape): boolean {
  return shape === 'fist' || shape === 'pointing';
}

/**
 * A straight finger goes on from the flat, and lies over it only when it is the near one of a hand on its edge. A bent
 * one lies over a palm, and behind a back.
 */
function liesOver(
  { points, straight }: DigitBones,
  shape: DrawnShape,
  face: SeenHand['face'],
  shown: number,
  before: number,
): boolean {
  if (straight) return face === 'edge' && before > 12;
  const lift = (points.at(-1)?.[2] ?? 0) - (points[0]?.[2] ?? 0);
  return (face === 'edge' || isFolded(shape) ? before : shown * lift) > standsOutFrom;
}

/** A point in the forearm close to the wrist, from which the hand grows without a line between them. */
function findCuff(from: Standpoint, arm: Arm): Point {
  const [x, y] = seePoint(from, arm.wrist);
  const elbow = seePoint(from, arm.elbow);
  const apart = Math.max(1, Math.hypot(elbow[0] - x, elbow[1] - y));
  const share = Math.min(6, apart) / apart;
  return [x + share * (elbow[0] - x), y + share * (elbow[1] - y)];
}
