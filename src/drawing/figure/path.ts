import type { Point } from '../smooth-outline.ts';

/**
 * Paths are written in whole tenths of a drawing unit, each step from the rounded point before it: short, the same on
 * every machine, and without drift. What holds them is scaled back by a tenth.
 */
const tenths = 10;

/** One step of a path, in drawing units: a line, an arc of a circle (clockwise), or a curve with one control point. */
export type Step =
  | { readonly to: Point }
  | { readonly to: Point; readonly radius: number; readonly large?: boolean }
  | { readonly to: Point; readonly by: Point };

/** Gives a length in whole tenths of a unit. */
export function inTenths(units: number): number {
  const rounded = Math.round(units * tenths);
  return rounded === 0 ? 0 : rounded;
}

/** Gives path data that begins at a point. */
export function writePath(start: Point, steps: readonly Step[], closed = false): string {
  let [x, y] = [inTenths(start[0]), inTenths(start[1])];
  let data = `M${x}${after(y)}`;
  let command = '';
  for (const step of steps) {
    const pair = (point: Point) => `${inTenths(point[0]) - x}${after(inTenths(point[1]) - y)}`;
    const [next, numbers] = writeStep(step, pair);
    data += next === command ? spaced(numbers) : `${next}${numbers}`;
    command = next;
    [x, y] = [inTenths(step.to[0]), inTenths(step.to[1])];
  }
  return closed ? `${data}z` : data;
}

function writeStep(step: Step, pair: (point: Point) => string): readonly [command: string, numbers: string] {
  const end = pair(step.to);
  if ('by' in step) return ['q', `${pair(step.by)}${spaced(end)}`];
  if (!('radius' in step)) return ['l', end];
  const radius = inTenths(step.radius);
  return ['a', `${radius} ${radius} 0 ${step.large === true ? 1 : 0} 1 ${end}`];
}

/** Gives path data of straight lines from point to point. Most of a figure is made of these, so they have their own way. */
export function writeLine(points: readonly Point[], closed = false): string {
  let [x, y] = [0, 0];
  let data = '';
  for (const point of points) {
    const [toX, toY] = [inTenths(point[0]), inTenths(point[1])];
    if (data === '') data = `M${toX}${after(toY)}`;
    else data += `l${toX - x}${after(toY - y)}`;
    [x, y] = [toX, toY];
  }
  return closed ? `${data}z` : data;
}

/** Gives path data of a circle: all of it but a tenth of a unit, which the closing line bridges. */
export function writeCircle([x, y]: Point, radius: number): string {
  return `M${inTenths(x)}${after(inTenths(y - radius))}a${inTenths(radius)} ${inTenths(radius)} 0 1 1-1 0z`;
}

/** Gives path data that a round pen turns into a dot. */
export function writeDot([x, y]: Point): string {
  return `M${inTenths(x)}${after(inTenths(y))}h1`;
}

/** A number after another one needs a space, unless its sign keeps them apart. */
function after(value: number): string {
  return value < 0 ? `${value}` : ` ${value}`;
}

function spaced(numbers: string): string {
  return numbers.startsWith('-') ? numbers : ` ${numbers}`;
}
