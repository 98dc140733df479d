import { body, outwardX, type Side, shoulderOf } from './body.ts';
import { across, add, dot, lengthOf, scale, subtract, turnAbout, unit, type Vector } from './vector.ts';
import { type HandFrame, measureWrist, settleWrist, wristLimits } from './wrist.ts';

/** An arm, solved. */
export interface Arm {
  readonly side: Side;
  readonly shoulder: Vector;
  readonly elbow: Vector;
  readonly wrist: Vector;
  readonly hand: HandFrame;
}

/**
 * How far an arm's joints go, in degrees. Chosen inside of what most people do without strain (common practice, no
 * source): an elbow neither straightens fully nor closes on itself, and it stays on the side where elbows hang.
 */
export const armLimits = {
  /** Between upper arm and forearm; 180 would be straight. */
  elbowDegrees: { least: 38, most: 172 },
  /** The elbow's turn about the line from shoulder to wrist, away from where it hangs. */
  swivelDegrees: 85,
} as const;

const radians = Math.PI / 180;

/** From the wrist to the middle of a hand, in drawing units. */
export const wristToMiddle = 24;

/** The least distance from shoulder to wrist at which an arm before the body looks at ease, in drawing units. */
const easySpan = 70;

/**
 * Solves an arm for the middle of its hand: two bones, with the elbow where it is most at ease within its limits.
 * A hand out of reach is brought to the nearest place within it; one that the wrist cannot turn to is turned as far as
 * it goes, and the arm follows it.
 * @param giveDegrees how far the hand may give way sideways to its forearm
 */
export function solveArm(side: Side, middle: Vector, hand: HandFrame, giveDegrees: number): Arm {
  const first = solveForWrist(side, add(middle, hand.fingers, -wristToMiddle), hand, giveDegrees);
  if (dot(first.hand.fingers, hand.fingers) > 0.999) return first;
  return solveForWrist(side, add(middle, first.hand.fingers, -wristToMiddle), hand, giveDegrees);
}

/** Gives the arm of the other side that does the same. */
export function mirrorArm(arm: Arm): Arm {
  const flip = ([x, y, z]: Vector): Vector => [-x, y, z];
  const { fingers, palm, thumb } = arm.hand;
  return {
    side: arm.side === 'left' ? 'right' : 'left',
    shoulder: flip(arm.shoulder),
    elbow: flip(arm.elbow),
    wrist: flip(arm.wrist),
    hand: { fingers: flip(fingers), palm: flip(palm), thumb: flip(thumb) },
  };
}

/** Gives the direction in which an elbow hangs: down and a little outwards, and straight back when the arm hangs too. */
export function hangElbow(side: Side, wrist: Vector): Vector {
  const hanging = Math.max(0, Math.min(1, (wrist[1] - body.shoulder.y - 60) / 40));
  return unit([outwardX[side] * (0.45 - 0.35 * hanging), 0.85, -0.4 - hanging]);
}

function solveForWrist(side: Side, wanted: Vector, hand: HandFrame, giveDegrees: number): Arm {
  const shoulder = shoulderOf(side);
  const wrist = bringWithinReach(shoulder, bringForward(shoulder, wanted));
  const reach = subtract(wrist, shoulder);
  const [span, axis] = [lengthOf(reach), unit(reach)];
  const along = (span ** 2 + body.upperArm ** 2 - body.forearm ** 2) / (2 * span);
  const off = Math.sqrt(Math.max(0, body.upperArm ** 2 - along ** 2));
  const hang = unit(across(hangElbow(side, wrist), axis));
  const placeAt = (degrees: number) => add(add(shoulder, axis, along), turnAbout(hang, axis, degrees * radians), off);
  const elbow = placeAt(
    findEasiest((degrees) => computeUnease(side, placeAt(degrees), wrist, hand, giveDegrees) + (degrees / 50) ** 2),
  );
  return { side, shoulder, elbow, wrist, hand: settleWrist(unit(subtract(wrist, elbow)), hand, giveDegrees) };
}

/** Finds the turn of the elbow, in degrees, that is easiest: first coarsely, then finer about the best. */
function findEasiest(computeCost: (degrees: number) => number): number {
  const most = armLimits.swivelDegrees;
  let best = 0;
  let least = computeCost(0);
  const attempt = (degrees: number) => {
    if (Math.abs(degrees) > most) return;
    const cost = computeCost(degrees);
    if (cost < least) [least, best] = [cost, degrees];
  };
  for (let degrees = 28; degrees <= most; degrees += 28) [degrees, -degrees].forEach(attempt);
  for (const step of [14, 7, 3]) [best - step, best + step].forEach(attempt);
  return best;
}

/** A hand close to its shoulder is brought to the front, which does not change where it is seen. */
function bringForward(shoulder: Vector, wrist: Vector): Vector {
  const [x, y, z] = subtract(wrist, shoulder);
  const front = Math.sqrt(Math.max(0, easySpan ** 2 - x * x - y * y));
  return z > 0 && y < 60 && front > z ? add(wrist, [0, 0, 1], front - z) : wrist;
}

/** Moves a wrist along the line from the shoulder, so that the elbow stays within its limits. */
function bringWithinReach(shoulder: Vector, wrist: Vector): Vector {
  const reach = subtract(wrist, shoulder);
  const distance = lengthOf(reach);
  const { least, most } = armLimits.elbowDegrees;
  const within = Math.max(spanAt(least), Math.min(spanAt(most), distance));
  if (distance === 0) return add(shoulder, [0, 1, 0], within);
  return distance === within ? wrist : add(shoulder, scale(reach, within / distance));
}

/** The distance from shoulder to wrist at an angle of the elbow, by the law of cosines. */
function spanAt(elbowDegrees: number): number {
  const { upperArm, forearm } = body;
  return Math.sqrt(upperArm ** 2 + forearm ** 2 - 2 * upperArm * forearm * Math.cos(elbowDegrees * radians));
}

/** How far an elbow's place is from comfort; 0 is at ease. What each thing weighs was chosen by eye. */
function computeUnease(side: Side, elbow: Vector, wrist: Vector, hand: HandFrame, giveDegrees: number): number {
  const { bend, sideways } = measureWrist(unit(subtract(wrist, elbow)), hand);
  const over = Math.max(0, Math.abs(bend) - wristLimits.bendDegrees + 5) / 10;
  const aside = Math.max(0, Math.abs(sideways) - Math.max(14, giveDegrees)) / 28;
  const inside = Math.max(0, 48 - outwardX[side] * elbow[0]) / 10;
  const behind = Math.max(0, -38 - elbow[2]) / 10;
  const raised = Math.max(0, body.shoulder.y + 20 - elbow[1]) / 22;
  return (bend / 80) ** 2 + 2 * over + aside ** 2 + inside ** 2 + behind ** 2 + raised ** 2;
}
