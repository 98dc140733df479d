import type { Point } from '../smooth-outline.ts';
import { figureBox } from './body.ts';
import type { HandMove } from './move.ts';
import { type MoveMark, makeMeet, makePart, makeRipple, makeTurn, makeWay } from './move-mark.ts';

/** Something that the sign of a move had better not cover: a thick line. */
export interface Obstacle {
  readonly from: Point;
  readonly to: Point;
  readonly radius: number;
  /** How bad it is to cover it. */
  readonly weight: number;
}

/** What a sign is to be placed by. */
export interface MarkSetting {
  readonly move: HandMove;
  /** Middles of the hand and, for a way, of the hand at its other end. */
  readonly hand: Point;
  readonly second: Point | undefined;
  readonly obstacles: readonly Obstacle[];
  /** True when the other hand moves too, so that each sign stays on its own side. */
  readonly paired: boolean;
}

/** A sign stays this far from the edges of the box, and from what it should not cover, in drawing units. */
const edge = 8;
const clearance = 5;

/** Chooses, among the places where the sign of a move can stand, the one that covers least. */
export function placeMark(setting: MarkSetting): MoveMark | undefined {
  const outwards = setting.hand[0] < figureBox.width / 2 ? -1 : 1;
  let best: MoveMark | undefined;
  let least = Number.POSITIVE_INFINITY;
  for (const [index, make] of listMarks(setting, outwards).entries()) {
    // The first places look best: a later one must cover clearly less.
    const preference = index * 0.4;
    if (preference >= least) break;
    const mark = make();
    const cost = computeCover(mark, setting, outwards) + preference;
    if (cost < least) [least, best] = [cost, mark];
  }
  return best;
}

/** Made only when they are looked at: most often the first place will do. */
function listMarks({ move, hand, second }: MarkSetting, outwards: 1 | -1): (() => MoveMark)[] {
  switch (move.kind) {
    case 'way':
      if (second === undefined) return [];
      return move.arrives ? listWays(second, hand, outwards) : listWays(hand, second, outwards);
    case 'ripple':
      return listSpots(hand, outwards, 90, (spot) => makeRipple(spot, outwards));
    case 'turn':
      return listSpots(hand, outwards, 0, (spot) => makeTurn(spot, outwards));
    case 'part':
      return listSpots(hand, outwards, 0, makePart);
    case 'meet':
      return listSpots(hand, outwards, 0, makeMeet);
  }
}

/** How far beside the straight way a way begins and ends, in drawing units; then on the other side. */
const waysBeside = [24, 32, 40, 54, -24, -32, -40, -54, 68];

/** Ways that run beside the straight one and bow out, on the outer or upper side first. */
function listWays(from: Point, to: Point, outwards: 1 | -1): (() => MoveMark)[] {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const length = Math.max(1, Math.hypot(dx, dy));
  const isLevel = Math.abs(dy) < 0.01 * length;
  const side = (isLevel ? dx < 0 : dy * outwards > 0) ? 1 : -1;
  return waysBeside.map((off) => () => {
    const at = (along: number, out: number): Point => [
      from[0] + along * dx + (side * out * dy) / length,
      from[1] + along * dy - (side * out * dx) / length,
    ];
    const beside = 0.86 * off;
    return makeWay(at(0.02, beside), at(0.5, beside + Math.sign(off) * 13), at(0.98, beside));
  });
}

const spotDistances = [38, 46, 54];
const spotDegrees = [0, -45, 45, -90, 90, -135, 135, 180];

/** Places round a hand, the nearest first, from a direction on; degrees from outwards, downwards. */
function listSpots(
  [x, y]: Point,
  outwards: 1 | -1,
  firstDegrees: number,
  make: (spot: Point) => MoveMark,
): (() => MoveMark)[] {
  return spotDistances.flatMap((distance) =>
    spotDegrees.map((degrees) => () => {
      const angle = ((firstDegrees + degrees) * Math.PI) / 180;
      return make([x + outwards * distance * Math.cos(angle), y + distance * Math.sin(angle)]);
    }),
  );
}

/** How bad a place is: what is covered, how far the other hand's side is entered, and above all how far the box is left. */
function computeCover(mark: MoveMark, { obstacles, paired }: MarkSetting, outwards: 1 | -1): number {
  const points = mark.lines.flatMap((line) => line.filter((_, index) => index % 2 === 0 || index === line.length - 1));
  let cost = 0;
  for (const [x, y] of points) {
    if (x < edge || y < edge || x > figureBox.width - edge || y > figureBox.height - edge) cost += 1000;
    if (paired && (x - figureBox.width / 2) * outwards < 8) cost += 2;
    let worst = 0;
    for (const { from, to, radius, weight } of obstacles) {
      if (weight > worst && measureSquare(x, y, from, to) < (radius + clearance) ** 2) worst = weight;
    }
    cost += (10 * worst) / points.length;
  }
  return cost;
}

/** Gives the square of the distance of a point from a line between two points, in drawing units. */
export function measureSquare(x: number, y: number, from: Point, to: Point): number {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const square = dx * dx + dy * dy;
  const along = square === 0 ? 0 : ((x - from[0]) * dx + (y - from[1]) * dy) / square;
  const share = Math.max(0, Math.min(1, along));
  return (x - from[0] - share * dx) ** 2 + (y - from[1] - share * dy) ** 2;
}
