import type { Gesture, HandPose, HandShape, Hands } from '../../content/types.ts';
import type { Posture, Side } from './body.ts';
import { findTargets, type Target, type Targets } from './placing.ts';

/** How one hand moves. */
export interface HandMove {
  /** A way from one place to another, a ripple on the spot, a turn, or fingers that part or meet. */
  readonly kind: 'way' | 'ripple' | 'turn' | 'part' | 'meet';
  /** The other end of a way. */
  readonly second?: Target;
  /** True when the written pose is where the way ends: the second pose comes before it. */
  readonly arrives: boolean;
}

/** How both hands move. */
export type HandMoves = { readonly [side in Side]?: HandMove };

/** How far a hand goes by a move whose other end is not written, in drawing units; chosen by eye. */
const stepUp = 62;
const stepOut = 46;
/** Hands no farther out than this are together. */
const togetherWithin = 40;

/**
 * Works out how the hands of a gesture move. The written pose is the one on the beat; with `then` the hands go on to that
 * one. Without it the move says where they go: a step up, down, apart, together or across. Where a hand already is at the
 * end of such a way (high for `rise`, low for `fall`, together for `close`), the move is how it came there.
 * Of two hands that do different things, one that holds something or lies open under the other stays still.
 */
export function findMoves(gesture: Gesture, targets: Targets, posture: Posture): HandMoves {
  const { move, then } = gesture;
  const ends = then && findTargets({ ...pickHands(gesture), ...pickHands(then) }, posture);
  const still = findStill(move, targets);
  const moveOf = (side: Side) => {
    if (ends !== undefined) return goOn(targets[side], ends[side]);
    return side === still ? undefined : deriveMove(move, side, targets);
  };
  const [left, right] = [moveOf('left'), moveOf('right')];
  return { ...(left && { left }), ...(right && { right }) };
}

function pickHands({ left, right, both }: Hands): Hands {
  if (both !== undefined) return { left: both, right: both };
  return { ...(left && { left }), ...(right && { right }) };
}

/** A hand whose pose changes goes there. One that only turns where it is is shown beside itself, or it would be hidden. */
function goOn(start: Target | undefined, end: Target | undefined): HandMove | undefined {
  if (end === undefined || (start !== undefined && isSame(start, end))) return undefined;
  const hidden = start !== undefined && Math.hypot(end.out - start.out, end.down - start.down) < stepOut / 2;
  return { kind: 'way', second: hidden ? { ...end, out: end.out + stepOut } : end, arrives: false };
}

function isSame(one: Target, other: Target): boolean {
  const same = (key: keyof HandPose) => one.pose[key] === other.pose[key];
  return same('at') && same('shape') && same('palm') && same('fingers');
}

function findStill(move: Gesture['move'], { left, right }: Targets): Side | undefined {
  if (left === undefined || right === undefined || isSame(left, right)) return undefined;
  const isFist = ({ pose }: Target) => pose.shape === 'fist';
  const isStill = (one: Target, other: Target) =>
    (one.pose.palm === 'up' && other.pose.palm !== 'up' && !isFist(one)) ||
    // A fist holds on while the other hand works; where hands close, it is the one that knocks.
    (isFist(one) !== isFist(other) && isFist(one) === (move !== 'close'));
  return isStill(left, right) ? 'left' : isStill(right, left) ? 'right' : undefined;
}

function deriveMove(move: Gesture['move'], side: Side, targets: Targets): HandMove | undefined {
  const target = targets[side];
  if (target === undefined || move === 'hold') return undefined;
  if (move === 'turn' || move === 'ripple') return { kind: move, arrives: false };
  const alone = targets[side === 'left' ? 'right' : 'left'] === undefined;
  if (alone && isGrip(target.pose.shape)) {
    if (move === 'open') return { kind: 'part', arrives: false };
    if (move === 'close') return { kind: 'meet', arrives: false };
  }
  const [out, down, arrives] = findStep(move, side, target, alone);
  return { kind: 'way', second: { ...target, out: target.out + out, down: target.down + down }, arrives };
}

/** From the written pose to the other one, outwards and down, and whether that one comes first. */
function findStep(
  move: 'open' | 'close' | 'rise' | 'fall' | 'cross',
  side: Side,
  { pose: { at }, out }: Target,
  alone: boolean,
): readonly [out: number, down: number, arrives: boolean] {
  const isHigh = at === 'above-head' || at === 'brow' || at === 'face';
  switch (move) {
    case 'rise':
      return isHigh ? [0, stepUp, true] : [0, -stepUp, false];
    case 'fall':
      return at === 'low' ? [0, -stepUp, true] : [0, stepUp, false];
    case 'open':
      return [stepOut, 0, false];
    case 'close':
      return out < togetherWithin ? [stepOut, 0, true] : [-stepOut, 0, false];
    case 'cross':
      return [-Math.max(stepOut, 1.8 * out), alone ? 0 : side === 'left' ? 14 : -14, false];
  }
}

/** A hand that opens and closes by its fingers alone. */
function isGrip(shape: HandShape): boolean {
  return shape === 'pinch' || shape === 'fist' || shape === 'spread';
}
