import type { Gesture } from '../../content/types.ts';
import { body, figureBox, type Posture, type Side, table } from './body.ts';
import { type Standpoint, seePoint } from './camera.ts';
import type { Limb } from './limb.ts';
import { findMoves } from './move.ts';
import type { MoveMark } from './move-mark.ts';
import { type Obstacle, placeMark } from './place-mark.ts';
import { findTargets, type PlacedHand, placeHand } from './placing.ts';
import { type SeenHand, seeHand } from './see-hand.ts';

/** An arm as seen. */
export interface SeenArm {
  readonly placed: PlacedHand;
  readonly upper: Limb;
  readonly fore: Limb;
  readonly hand: SeenHand;
  /** How near the wrist is to the viewer. */
  readonly near: number;
}

/** A gesture as seen. */
export interface SeenGesture {
  /** Arms in the written pose, the farthest first. */
  readonly arms: readonly SeenArm[];
  /** Arms at the other end of their way. */
  readonly seconds: readonly SeenArm[];
  readonly marks: readonly MoveMark[];
}

const sides: readonly Side[] = ['left', 'right'];

/** Worked out once for each gesture, standpoint and posture, for drawing it and for comparing it with others. */
const known = {
  'front standing': new WeakMap<Gesture, SeenGesture>(),
  'front seated': new WeakMap<Gesture, SeenGesture>(),
  'behind standing': new WeakMap<Gesture, SeenGesture>(),
  'behind seated': new WeakMap<Gesture, SeenGesture>(),
};

/** Gives all that is drawn of a gesture: arms, second pose and the signs of its move. Asked again, gives the same object. */
export function seeGesture(gesture: Gesture, from: Standpoint, posture: Posture): SeenGesture {
  const memo = known[`${from} ${posture}`];
  const seen = memo.get(gesture) ?? lookAt(gesture, from, posture);
  memo.set(gesture, seen);
  return seen;
}

function lookAt(gesture: Gesture, from: Standpoint, posture: Posture): SeenGesture {
  const targets = findTargets(gesture, posture);
  const moves = findMoves(gesture, targets, posture);
  const hands = sides.map((side) => {
    const move = moves[side];
    const arm = seeArm(placeHand(side, targets[side], posture), from);
    const second = move?.second === undefined ? undefined : seeArm(placeHand(side, move.second, posture), from);
    return { move, arm, second };
  });
  const arms = hands.map(({ arm }) => arm);
  const seconds = hands.flatMap(({ second }) => second ?? []);
  const obstacles = [...(posture === 'seated' ? [tableAndBelow] : []), ...listObstacles(arms, seconds)];
  const paired = moves.left !== undefined && moves.right !== undefined;
  const marks = hands.flatMap(({ move, arm, second }) => {
    if (move === undefined) return [];
    return placeMark({ move, hand: arm.hand.middle, second: second?.hand.middle, obstacles, paired }) ?? [];
  });
  return {
    arms: arms.sort((one, other) => one.near - other.near || other.hand.middle[1] - one.hand.middle[1]),
    seconds,
    marks,
  };
}

/** Gives an arm as it is seen. */
export function seeArm(placed: PlacedHand, from: Standpoint): SeenArm {
  const { arm, shape } = placed;
  const [shoulder, elbow, wrist] = [
    seePoint(from, arm.shoulder),
    seePoint(from, arm.elbow),
    seePoint(from, arm.wrist),
  ] as const;
  const { elbowRadius } = body;
  return {
    placed,
    upper: { from: shoulder, fromRadius: body.shoulder.radius, to: elbow, toRadius: elbowRadius, swell: 0.6 },
    fore: { from: elbow, fromRadius: elbowRadius, to: wrist, toRadius: body.wristRadius, swell: 1.4 },
    hand: seeHand(arm, shape, from),
    near: from === 'front' ? arm.wrist[2] : -arm.wrist[2],
  };
}

/** The table and all below it. */
const tableAndBelow: Obstacle = {
  from: [0, figureBox.height],
  to: [figureBox.width, figureBox.height],
  radius: figureBox.height - table.top,
  weight: 2,
};

/** What signs had better not cover, and how bad it is: hands most, then the head, arms, and the second pose. */
function listObstacles(arms: readonly SeenArm[], seconds: readonly SeenArm[]): Obstacle[] {
  const { y } = body.head;
  const middleX = figureBox.width / 2;
  return [
    { from: [middleX, y - 4], to: [middleX, y + 4], radius: 26, weight: 2.5 },
    ...arms.flatMap((arm) => listArmObstacles(arm, 3, 2)),
    ...seconds.flatMap((arm) => listArmObstacles(arm, 2, 0.4)),
  ];
}

function listArmObstacles({ upper, fore, hand }: SeenArm, handWeight: number, armWeight: number): Obstacle[] {
  const limbs = [upper, fore].map(({ from, to, fromRadius }) => ({ from, to, radius: fromRadius, weight: armWeight }));
  const [cuff, end] = hand.spine;
  const tips = hand.digits.map(({ points }) => ({
    from: end,
    to: points.at(-1) ?? end,
    radius: 6,
    weight: handWeight,
  }));
  return [...tips, { from: cuff, to: end, radius: 11, weight: handWeight }, ...limbs];
}
