/** A point of a drawing: x to the right, y downwards. */
export type Point = readonly [x: number, y: number];

/**
 * Gives the path data of one closed, soft curve that passes close by the given points, in whole numbers.
 * The curve is a quadratic B-spline. Its control points are put on even numbers, so that the joints between them are
 * whole and each `t` command finds its control point again exactly: two short numbers a point, and no drift.
 * @param points three or more, in order around the shape
 */
export function renderSmoothOutline(points: readonly Point[]): string {
  const controls = points.map((point, index) => spreadPoint(at(points, index - 1), point, at(points, index + 1)));
  const joints = controls.map((control, index) => middle(control, at(controls, index + 1)));
  const start = at(joints, -1);
  const first = at(controls, 0);
  const steps = joints.map((joint, index) => pair(joint, at(joints, index - 1)));
  const [head, ...rest] = steps;
  return `M${start[0]} ${start[1]}q${pair(first, start)} ${head}${rest.map((step) => `t${step}`).join('')}z`;
}

function at(points: readonly Point[], index: number): Point {
  const point = points.at(index % points.length);
  if (point === undefined) throw new RangeError('an outline needs at least one point');
  return point;
}

/** A B-spline stays inside its control points: push each outwards by about as much as the curve will fall short. */
function spreadPoint(before: Point, point: Point, after: Point): Point {
  const push = (axis: 0 | 1) => point[axis] + 0.3 * (point[axis] - (before[axis] + after[axis]) / 2);
  return [toEven(push(0)), toEven(push(1))];
}

function toEven(value: number): number {
  return Math.round(value / 2) * 2;
}

function middle(one: Point, other: Point): Point {
  return [(one[0] + other[0]) / 2, (one[1] + other[1]) / 2];
}

function pair(to: Point, from: Point): string {
  const y = to[1] - from[1];
  return `${to[0] - from[0]}${y < 0 ? '' : ' '}${y}`;
}
