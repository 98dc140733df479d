import type { Point } from '../smooth-outline.ts';

/**
 * Paths are written in whole grains, each step from the rounded point before it: short, the same on every machine, and
 * without drift. At a figure's height of 3 cm a grain is 0.023 mm, at 12 cm 0.09 mm; with coarser ones bends
 * lose their roundness there.
 */
const grainsPerUnit = 4;

/** What holds paths is scaled back by this: a grain in units, as it is written. */
export const grainUnits = `${1 / grainsPerUnit}`.slice(1);

/** One step of a path, in drawing units: a line, an arc of a circle (clockwise), or a curve with one control point. */
export type Step =
  | { readonly to: Point }
  | { readonly to: Point; readonly radius: number; readonly large?: boolean }
  | { readonly to: Point; readonly by: Point };

/** A run of steps, in drawing units. */
export interface Run {
  readonly start: Point;
  readonly steps: readonly Step[];
}

/** Gives a length in whole grains. */
export function inGrains(units: number): number {
  return Math.round(units * grainsPerUnit);
}

/** Gives path data that begins at a point. */
export function writePath(start: Point, steps: readonly Step[], closed = false): string {
  let [x, y] = [inGrains(start[0]), inGrains(start[1])];
  let data = `M${x}${after(y)}`;
  let command = '';
  for (const step of steps) {
    const pair = (point: Point) => `${inGrains(point[0]) - x}${after(inGrains(point[1]) - y)}`;
    const [next, numbers] = writeStep(step, pair);
    data += next === command ? spaced(numbers) : `${next}${numbers}`;
    command = next;
    [x, y] = [inGrains(step.to[0]), inGrains(step.to[1])];
  }
  return closed ? `${data}z` : data;
}

function writeStep(step: Step, pair: (point: Point) => string): readonly [command: string, numbers: string] {
  const end = pair(step.to);
  if ('by' in step) return ['q', `${pair(step.by)}${spaced(end)}`];
  if (!('radius' in step)) return ['l', end];
  const radius = inGrains(step.radius);
  return ['a', `${radius} ${radius} 0 ${step.large === true ? 1 : 0} 1${spaced(end)}`];
}

/**
 * Gives path data of runs of straight lines from point to point. Most of a figure is made of these, so they have their
 * own way: after a relative move, which is but the first, more pairs are lines.
 */
export function writeLines(lines: readonly (readonly Point[])[], closed = false): string {
  let [x, y] = [0, 0];
  let data = '';
  for (const line of lines) {
    let [startX, startY] = [x, y];
    let command = data === '' ? 'M' : 'm';
    for (const point of line) {
      const [toX, toY] = [inGrains(point[0]), inGrains(point[1])];
      const [byX, byY] = [toX - x, toY - y];
      data += command === '' ? `${after(byX)}${after(byY)}` : `${command}${byX}${after(byY)}`;
      if (command === 'M' || command === 'm') [startX, startY] = [toX, toY];
      command = command === 'M' ? 'l' : '';
      [x, y] = [toX, toY];
    }
    if (!closed) continue;
    data += 'z';
    [x, y] = [startX, startY];
  }
  return data;
}

/** Gives path data of a circle: all of it but a grain, which the closing line bridges. */
export function writeCircle([x, y]: Point, radius: number): string {
  return `M${inGrains(x)}${after(inGrains(y - radius))}a${inGrains(radius)} ${inGrains(radius)} 0 1 1-1 0z`;
}

/** Gives path data that a round pen turns into a dot. */
export function writeDot([x, y]: Point): string {
  return `M${inGrains(x)}${after(inGrains(y))}h0`;
}

/** A number after another one needs a space, unless its sign keeps them apart. */
function after(value: number): string {
  return value < 0 ? `${value}` : ` ${value}`;
}

function spaced(numbers: string): string {
  return numbers.startsWith('-') ? numbers : ` ${numbers}`;
}
