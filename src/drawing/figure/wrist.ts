import type { Side } from './body.ts';
import { add, cross, dot, scale, type Vector } from './vector.ts';

/** How a hand is turned: directions of length 1, square to one another, along its fingers, out of its palm, to its thumb. */
export interface HandFrame {
  readonly fingers: Vector;
  readonly palm: Vector;
  readonly thumb: Vector;
}

/**
 * How far a wrist bends against its forearm, in degrees: towards palm or back, and sideways in the plane of the palm.
 * Chosen at or inside of what most people do without strain (common practice, no source).
 */
export const wristLimits = { bendDegrees: 80, sidewaysDegrees: 40 } as const;

const radians = Math.PI / 180;

/** Gives the axes of a hand from two of them. */
export function makeFrame(side: Side, fingers: Vector, palm: Vector): HandFrame {
  return { fingers, palm, thumb: side === 'right' ? cross(palm, fingers) : cross(fingers, palm) };
}

/** Measures how a hand is bent against its forearm, in degrees: towards the palm and towards the thumb are positive. */
export function measureWrist(forearm: Vector, hand: HandFrame): { readonly bend: number; readonly sideways: number } {
  const sine = Math.max(-1, Math.min(1, dot(forearm, hand.thumb)));
  return {
    bend: Math.atan2(-dot(forearm, hand.palm), dot(forearm, hand.fingers)) / radians,
    sideways: -Math.asin(sine) / radians,
  };
}

/**
 * Turns a hand as its wrist needs: it gives way to a sideways bend by a good half of it, as hands do; then it is brought
 * within its limits, first in the plane of its palm, then towards palm or back.
 * @param forearm direction of length 1 from the elbow
 * @param giveDegrees the most by which it gives way; 0 keeps to the words as far as the limits allow
 */
export function settleWrist(forearm: Vector, hand: HandFrame, giveDegrees: number): HandFrame {
  const { sideways } = measureWrist(forearm, hand);
  const eased = turnHand(hand, 'palm', -clamp(sideways * 0.6, giveDegrees) * radians);
  const straightened = turnHand(eased, 'palm', findSideTurn(forearm, eased));
  const { bend } = measureWrist(forearm, straightened);
  return turnHand(straightened, 'thumb', (clamp(bend, wristLimits.bendDegrees) - bend) * radians);
}

/**
 * The turn in the plane of the palm, in radians, that brings the sideways bend within its limit. Fingers that would have
 * to point back along the forearm are turned round here too: so the palm is kept, which is seen best.
 */
function findSideTurn(forearm: Vector, hand: HandFrame): number {
  const [ahead, thumb] = [dot(forearm, hand.fingers), dot(forearm, hand.thumb)];
  const inPlane = Math.hypot(ahead, thumb);
  const most = Math.sin(wristLimits.sidewaysDegrees * radians);
  const isBack = ahead < 0 && inPlane > 0.75;
  if (Math.abs(thumb) <= most && !isBack) return 0;
  return Math.atan2(thumb, ahead) - (thumb < 0 ? -1 : 1) * Math.asin(most / inPlane);
}

/** Turns a hand about the axis of its palm, fingers towards the thumb, or of its thumb, fingers towards the palm. */
function turnHand(hand: HandFrame, about: 'palm' | 'thumb', angleRadians: number): HandFrame {
  const towards = about === 'palm' ? 'thumb' : 'palm';
  const [cos, sin] = [Math.cos(angleRadians), Math.sin(angleRadians)];
  const fingers = add(scale(hand.fingers, cos), hand[towards], sin);
  return { ...hand, fingers, [towards]: add(scale(hand[towards], cos), hand.fingers, -sin) };
}

function clamp(value: number, most: number): number {
  return Math.max(-most, Math.min(most, value));
}
