import type { Point } from '../smooth-outline.ts';
import type { Run } from './path.ts';

/** The sign of a move: lines, and solid heads that point away from where they come. */
export interface MoveMark {
  /** What is drawn. */
  readonly runs: readonly Run[];
  /** The same as points along the way, to find out what it covers. */
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
  return { runs: [{ start, steps: [{ by, to: tip }] }], lines: [line], heads: [{ from: line.at(-3) ?? start, tip }] };
}

/** Gives a turn about a point, most of a circle. */
export function makeTurn([x, y]: Point, outwards: 1 | -1): MoveMark {
  const [radius, steps] = [12, 14];
  const line = Array.from({ length: steps + 1 }, (_, step): Point => {
    const angle = outwards * (0.5 + (step / steps) * 4.9) - Math.PI / 2;
    return [x + radius * Math.cos(angle), y + radius * Math.sin(angle)];
  });
  const start: Point = line[0] ?? [x, y];
  const end: Point = line.at(-1) ?? [x, y];
  // Arcs are written clockwise.
  const [first, last] = outwards === 1 ? [start, end] : [end, start];
  const runs = [{ start: first, steps: [{ to: last, radius, large: true }] }];
  return { runs, lines: [line], heads: [{ from: line.at(-4) ?? [x, y], tip: end }] };
}

/** Gives a ripple from the middle outwards: two waves, to and fro, so without a head. */
export function makeRipple([x, y]: Point, outwards: 1 | -1): MoveMark {
  const [points, length, height] = [24, 48, 4.5];
  const at = (share: number, down: number): Point => [x + outwards * length * (share - 0.5), y + down];
  const line = Array.from({ length: points + 1 }, (_, index) =>
    at(index / points, -height * Math.sin((index / points) * 4 * Math.PI)),
  );
  // A curve's control point lies twice as far out as its middle.
  const steps = Array.from({ length: 4 }, (_, wave) => ({
    by: at((wave + 0.5) / 4, wave % 2 === 0 ? -2 * height : 2 * height),
    to: at((wave + 1) / 4, 0),
  }));
  return { runs: [{ start: at(0, 0), steps }], lines: [line], heads: [] };
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
  const runs = sides.map(([start, to]) => ({ start, steps: [{ to }] }));
  return { runs, lines: sides, heads: sides.map(([from, tip]) => ({ from, tip })) };
}
