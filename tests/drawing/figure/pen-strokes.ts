import type { Element, ElementContent } from 'hast';

type Point = readonly [number, number];

/** One path as it is painted, in drawing units. */
export interface PenStroke {
  readonly lines: readonly (readonly Point[])[];
  /** Colours as written; undefined for none. */
  readonly stroke: string | undefined;
  readonly fill: string | undefined;
  readonly width: number;
}

interface Pen {
  readonly stroke?: string;
  readonly fill?: string;
  readonly width: number;
  readonly scale: number;
  readonly shift: number;
  readonly flip: 1 | -1;
}

/** All paths of a drawing in the order in which they are painted. Knows the attributes and transforms of figures only. */
export const listPenStrokes = (
  nodes: readonly ElementContent[],
  pen: Pen = { width: 1, scale: 1, shift: 0, flip: 1 },
): PenStroke[] => nodes.flatMap((node) => (node.type === 'element' ? readElement(node, pen) : []));

const readElement = (element: Element, outer: Pen): PenStroke[] => {
  const { stroke, fill, strokeWidth, transform, d } = element.properties;
  const pen: Pen = {
    ...outer,
    ...(stroke === undefined ? {} : { stroke: String(stroke) }),
    ...(fill === undefined ? {} : { fill: String(fill) }),
    ...(strokeWidth === undefined ? {} : { width: Number(strokeWidth) }),
    ...(transform === undefined ? {} : placeWithin(outer, readTransform(String(transform)))),
  };
  if (element.tagName !== 'path') return listPenStrokes(element.children, pen);
  const place = ([x, y]: Point): Point => [pen.shift + pen.flip * pen.scale * x, pen.scale * y];
  return [
    {
      lines: readPath(String(d)).map((line) => line.map(place)),
      stroke: pen.stroke === 'none' ? undefined : pen.stroke,
      fill: pen.fill === 'none' ? undefined : pen.fill,
      width: pen.width * pen.scale,
    },
  ];
};

/** A transform within another: what is in it is flipped, scaled and shifted by both. */
const placeWithin = (outer: Pen, { scale, shift, flip }: Pick<Pen, 'scale' | 'shift' | 'flip'>) => ({
  scale: outer.scale * scale,
  shift: outer.shift + outer.flip * outer.scale * shift,
  flip: outer.flip === flip ? (1 as const) : (-1 as const),
});

const readTransform = (transform: string): Pick<Pen, 'scale' | 'shift' | 'flip'> => {
  const [, shift, minus, scale] = /^(?:translate\((\d+)\))?scale\((-?)([\d.]+)(?: \3)?\)$/.exec(transform) ?? [];
  if (scale === undefined) throw new Error(`unknown transform ${transform}`);
  return { scale: Number(scale), shift: Number(shift ?? 0), flip: minus === '-' ? -1 : 1 };
};

/** Turns path data into runs of points. Knows M, m with lines after it, l, h, q, circular a, and z. */
const readPath = (data: string): Point[][] => {
  const lines: Point[][] = [];
  let [x, y] = [0, 0];
  for (const [, command = '', rest = ''] of data.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const numbers = (rest.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    const size = { M: 2, m: 2, l: 2, h: 1, q: 4, a: 7, z: 0 }[command];
    if (size === undefined || (size === 0 ? numbers.length > 0 : numbers.length % size !== 0 || numbers.length === 0)) {
      throw new Error(`cannot read ${command}${rest}`);
    }
    if (command === 'M' || command === 'm') lines.push([]);
    const line = lines.at(-1) ?? [];
    const start = line[0];
    if (command === 'z' && start !== undefined) line.push(start);
    for (let index = 0; index < numbers.length; index += size) {
      const [a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0] = numbers.slice(index, index + size);
      if (command === 'M') line.push([a, b]);
      if (command === 'l' || command === 'm') line.push([x + a, y + b]);
      if (command === 'h') line.push([x + a, y]);
      if (command === 'q') {
        for (let t = 1 / 8; t <= 1; t += 1 / 8) {
          line.push([x + 2 * t * (1 - t) * a + t * t * c, y + 2 * t * (1 - t) * b + t * t * d]);
        }
      }
      if (command === 'a') line.push(...readArc([x, y], [x + f, y + g], a, d === 1, e === 1));
      [x, y] = line.at(-1) ?? [x, y];
    }
  }
  return lines;
};

/** Points of a circle's arc, after the implementation notes of SVG 2 (appendix B.2.4, from memory). */
const readArc = (from: Point, to: Point, radius: number, large: boolean, clockwise: boolean): Point[] => {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const half = Math.hypot(dx, dy) / 2;
  const round = Math.max(radius, half);
  const off = Math.sqrt(round * round - half * half) * (large === clockwise ? -1 : 1);
  const centre = [
    (from[0] + to[0]) / 2 - (off * dy) / (2 * half),
    (from[1] + to[1]) / 2 + (off * dx) / (2 * half),
  ] as const;
  const start = Math.atan2(from[1] - centre[1], from[0] - centre[0]);
  const end = Math.atan2(to[1] - centre[1], to[0] - centre[0]);
  const full = 2 * Math.PI;
  const turn = clockwise ? (((end - start) % full) + full) % full : -((((start - end) % full) + full) % full);
  return Array.from({ length: 16 }, (_, step): Point => {
    const angle = start + (turn * (step + 1)) / 16;
    return [centre[0] + round * Math.cos(angle), centre[1] + round * Math.sin(angle)];
  });
};
