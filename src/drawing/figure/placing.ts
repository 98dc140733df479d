import type { HandPose, Hands } from '../../content/types.ts';
import { type Arm, mirrorArm, solveArm } from './arm.ts';
import { outwardX, type Posture, type Side } from './body.ts';
import { findOverhang } from './frame.ts';
import { aimHand } from './hand-aim.ts';
import type { DrawnShape } from './hand-shape.ts';
import { placeOf } from './place-hand.ts';
import type { HandFrame } from './wrist.ts';

/** Where the middle of a hand is to be. */
export interface Target {
  readonly pose: HandPose;
  /** Outwards from the middle of the body, downwards from the top of the box, and to the front; in drawing units. */
  readonly out: number;
  readonly down: number;
  readonly front: number;
}

/** Where each hand is to be; one left out rests. */
export type Targets = { readonly [side in Side]?: Target };

/** One hand with its arm, solved. */
export interface PlacedHand {
  readonly arm: Arm;
  readonly shape: DrawnShape;
  /** Of a right hand, the left one that it is the exact mirror image of. */
  readonly mirrors?: PlacedHand;
}

/** Finds where hands are to be. Two hands before the body that do something with one another meet, one above the other. */
export function findTargets(hands: Hands, posture: Posture): Targets {
  const left = findTarget(hands.left ?? hands.both, posture);
  const right = findTarget(hands.right ?? hands.both, posture);
  if (left === undefined || right === undefined) return { ...(left && { left }), ...(right && { right }) };
  const lower = findLower(left, right);
  if (lower === undefined) return { left, right };
  const [sink, lift] = left.pose.at === right.pose.at ? [16, -20] : [-10, 12];
  const meet = (target: Target): Target => ({
    ...target,
    out: target.out * 0.35,
    down: target.down + (target === lower ? sink : lift),
  });
  return { left: meet(left), right: meet(right) };
}

function findTarget(pose: HandPose | undefined, posture: Posture): Target | undefined {
  if (pose === undefined) return undefined;
  const [out, down, front] = placeOf(pose, posture);
  return { pose, out, down, front };
}

/** Of two hands before the body that are at different heights, or of which one lies open under the other, the lower. */
function findLower(left: Target, right: Target): Target | undefined {
  const isBefore = ({ pose }: Target) => pose.at === 'chest' || pose.at === 'waist';
  if (!isBefore(left) || !isBefore(right)) return undefined;
  if (left.pose.at !== right.pose.at) return left.pose.at === 'waist' ? left : right;
  const upturned = [left, right].filter(({ pose }) => pose.palm === 'up');
  return upturned.length === 1 ? upturned[0] : undefined;
}

/** Hands that do nothing: they hang by the side, or lie on the table. */
const atRest: Readonly<Record<Posture, Target>> = {
  standing: { pose: { shape: 'open', at: 'low', palm: 'in', fingers: 'down' }, out: 58, down: 283, front: 18 },
  seated: { pose: { shape: 'open', at: 'low', palm: 'down', fingers: 'in' }, out: 44, down: 250, front: 40 },
};

/** By what is asked for, in words and places: few poses make up all gestures of a set, and each is solved once. */
const solved = new Map<string, PlacedHand>();
/** More than the poses of many sets; a bound, since an author's page may try out a great many. */
const mostSolved = 2000;

/** Solves the arm of a hand within the frame; without a target it rests. */
export function placeHand(side: Side, target: Target | undefined, posture: Posture): PlacedHand {
  const { pose, out, down, front } = target ?? atRest[posture];
  const shape = target === undefined ? 'resting' : pose.shape;
  const key = `${posture} ${shape} ${pose.palm} ${pose.fingers} ${out} ${down} ${front}`;
  const left = solved.get(key) ?? placeLeftHand(target ?? atRest[posture], shape, posture);
  if (solved.size >= mostSolved) solved.clear();
  solved.set(key, left);
  return side === 'left' ? left : { arm: mirrorArm(left.arm), shape, mirrors: left };
}

/** The left hand stands for both, so that the two are exact mirror images. */
function placeLeftHand({ pose, out, down, front }: Target, shape: DrawnShape, posture: Posture): PlacedHand {
  const hand = aimHand('left', pose);
  const give = findGive(shape, hand);
  const solve = (x: number, y: number) => solveArm('left', [outwardX.left * x, y, front], hand, give);
  let place = [out, down] as const;
  let arm = solve(...place);
  // Each pass brings the hand back by a little more than it stands out; where its wrist turns on the way, another follows.
  for (let pass = 0; pass < 8; pass++) {
    const [over, below] = findOverhang(arm, shape, posture);
    if (over === 0 && below === 0) break;
    place = [place[0] - 1.2 * over, place[1] - 1.2 * below];
    arm = solve(...place);
  }
  return { arm, shape };
}

/** How far a hand may give way sideways to its forearm, in degrees: a fist most, for where it points is hardly seen. */
function findGive(shape: DrawnShape, { palm }: HandFrame): number {
  if (shape === 'fist') return 60;
  if (shape === 'resting') return 20;
  // A hand seen on its edge would turn towards the viewer or away, and be shortened.
  const flat = 22 * (palm[2] ** 2 + 0.5 * palm[1] ** 2);
  return shape === 'pinch' ? Math.max(15, flat) : flat;
}
