import type { Point } from '../smooth-outline.ts';

/** The sign of a move: lines as runs of points, and solid heads that point away from where they come. */
export interface MoveMark {
  readonly lines: readonly (readonly Point[])[];
  readonly heads: readonly { readonly from: Point; readonly tip: Point }[];
}

/** Gives a way from a point to another that bows out towards a third. */
export function makeWay(start: Point, by: Point, tip: Point): MoveMark {
  const steps = 10;
  const line = Array.from({ length: steps + 1 }, (_, step): Point => {
    const t = step / steps;
    const mix = (axis: 0 | 1) => (1 - t) ** 2 * start[axis] + 2 * t * (1 - t) * by[axis] + t * t * tip[axis];
    return [mix(0), mix(1)];
  });
  return { lines: [line], heads: [{ from: line.at(-3) ?? start, tip }] };
}

/** Gives a turn about a point, most of a circle. */
export function makeTurn([x, y]: Point, outwards: 1 | -1): MoveMark {
  const [radius, steps] = [12, 14];
  const line = Array.from({ length: steps + 1 }, (_, step): Point => {
    const angle = outwards * (0.5 + (step / steps) * 4.9) - Math.PI / 2;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  return { lines: [line], heads: [{ from: line.at(-4) ?? [x, y], tip: line.at(-1) ?? [x, y] }] };
}

/** Gives a ripple from the middle outwards: two waves, to and fro, so without a head. */
export function makeRipple([x, y]: Point, outwards: 1 | -1): MoveMark {
  const [steps, length, height] = [24, 48, 4.5];
  const line = Array.from({ length: steps + 1 }, (_, step): Point => {
    const share = step / steps;
    return [x + outwards * length * (share - 0.5), y - height * Math.sin(share * 4 * Math.PI)];
  });
  return { lines: [line], heads: [] };
}

/** Gives two short ways apart. */
export function makePart([x, y]: Point): MoveMark {
  return pairUp(x, y, 3, 19);
}

/** Gives two short ways towards one another. */
export function makeMeet([x, y]: Point): MoveMark {
  return pairUp(x, y, 22, 7);
}

function pairUp(x: number, y: number, start: number, end: number): MoveMark {
  const sides = [-1, 1].map((side): [Point, Point] => [
    [x + side * start, y],
    [x + side * end, y],
  ]);
  return { lines: sides, heads: sides.map(([from, tip]) => ({ from, tip })) };
}
