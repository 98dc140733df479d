import type { Point } from '../smooth-outline.ts';
import { type Step, writeCircle, writeDot, writePath } from './path.ts';

/** A part of an arm as seen: round at both ends, wider at the first. */
export interface Limb {
  readonly from: Point;
  readonly fromRadius: number;
  readonly to: Point;
  readonly toRadius: number;
  /** How far the muscle stands out at the sides, in drawing units. */
  readonly swell: number;
}

interface Side {
  readonly start: Point;
  readonly by: Point;
  readonly end: Point;
}

/** Gives a limb as a closed outline. */
export function writeLimb(limb: Limb): string {
  const sides = findSides(limb);
  if (sides === undefined) return writeEnd(limb);
  const [left, right] = sides;
  const back: Step = { to: left.start, radius: limb.fromRadius, large: true };
  return writePath(left.start, [...followSides(left, right, limb.toRadius), back], true);
}

/** A limb that grows out of the body. */
export interface JoinedLimb {
  /** Open where it joins the body, so that no line crosses the body there. */
  readonly outline: string;
  /** Dots of paper that hide the inner half of the line where it begins and ends, and how wide they are. */
  readonly patches: string;
  readonly patchWidth: number;
}

/** Radius of a patch in drawing units: a little more than the line is wide. */
const patchRadius = 3.4;
/** The line on the side of the armpit begins this share of its way later. */
const armpitShare = 0.3;

/**
 * Gives a limb that is open where it joins the body.
 * @param armpit a point within the body on the limb's side
 */
export function writeJoinedLimb(limb: Limb, armpit: Point): JoinedLimb {
  const sides = findSides(limb);
  if (sides === undefined) return { outline: writeEnd(limb), patches: '', patchWidth: 0 };
  const [left, right] = sides;
  const leftInside = distance(left.start, armpit) < distance(right.start, armpit);
  const first = leftInside ? shorten(left) : left;
  const last = leftInside ? right : shorten(right);
  return {
    outline: writePath(first.start, followSides(first, last, limb.toRadius)),
    patches: writeDot(goInside(first, 1)) + writeDot(goInside(last, -1)),
    patchWidth: 2 * patchRadius,
  };
}

/** Down one side, round the narrow end, up the other. */
function followSides(left: Side, right: Side, radius: number): Step[] {
  return [
    { to: left.end, by: left.by },
    { to: right.end, radius },
    { to: right.start, by: right.by },
  ];
}

/** One end hides the other: the limb points at the viewer. */
function writeEnd(limb: Limb): string {
  return limb.fromRadius > limb.toRadius
    ? writeCircle(limb.from, limb.fromRadius)
    : writeCircle(limb.to, limb.toRadius);
}

/** The later part of a side, by halving its curve as its control points say. */
function shorten({ start, by, end }: Side): Side {
  const [first, second] = [mix(start, by, armpitShare), mix(by, end, armpitShare)];
  return { start: mix(first, second, armpitShare), by: second, end };
}

/** A point inside of the limb, a patch's radius from where a side begins. */
function goInside({ start, by }: Side, turn: 1 | -1): Point {
  const share = (turn * patchRadius) / Math.max(0.1, distance(start, by));
  return [start[0] - share * (by[1] - start[1]), start[1] + share * (by[0] - start[0])];
}

/** The lines that touch both ends, to the left and right of who walks along; `undefined` when one end hides the other. */
function findSides(limb: Limb): readonly [left: Side, right: Side] | undefined {
  const { from, fromRadius, to, toRadius } = limb;
  const length = distance(from, to);
  if (length <= Math.abs(fromRadius - toRadius) + 0.5) return undefined;
  const heading = Math.atan2(to[1] - from[1], to[0] - from[0]);
  const lean = Math.acos((fromRadius - toRadius) / length);
  // The more a limb points at the viewer, the less of its muscle is seen at the sides.
  const swell = 2 * Math.min(limb.swell, length / 20);
  const sideAt = (angle: number): Side => {
    const out: Point = [Math.cos(angle), Math.sin(angle)];
    const start: Point = [from[0] + fromRadius * out[0], from[1] + fromRadius * out[1]];
    const end: Point = [to[0] + toRadius * out[0], to[1] + toRadius * out[1]];
    const by = mix(start, end, 0.4);
    return { start, by: [by[0] + swell * out[0], by[1] + swell * out[1]], end };
  };
  return [sideAt(heading - lean), sideAt(heading + lean)];
}

function mix(one: Point, other: Point, share: number): Point {
  return [one[0] + share * (other[0] - one[0]), one[1] + share * (other[1] - one[1])];
}

function distance(one: Point, other: Point): number {
  return Math.hypot(one[0] - other[0], one[1] - other[1]);
}
