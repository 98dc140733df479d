export type Polygon = [number, number][];

/**
 * Turns path data into polygons, after the implementation notes of SVG 2 (appendix B.2.4 for arcs, from memory).
 * Knows the commands that the drawings use: M, H, V, A, a, q, t, z.
 */
export const flattenPath = (data: string): Polygon[] => {
  const polygons: Polygon[] = [];
  let at: [number, number] = [0, 0];
  let control: [number, number] = [0, 0];
  for (const [, command = '', rest = ''] of data.matchAll(/([a-zA-Z])([^a-zA-Z]*)/g)) {
    const numbers = (rest.match(/-?\d*\.?\d+/g) ?? []).map(Number);
    const n = (index: number): number => {
      const value = numbers[index];
      if (value === undefined || !Number.isFinite(value))
        throw new Error(`number ${index} missing in ${command}${rest}`);
      return value;
    };
    const polygon = polygons.at(-1) ?? [];
    if (command === 'M') {
      at = [n(0), n(1)];
      polygons.push([at]);
    } else if (command === 'H' || command === 'V') {
      at = command === 'H' ? [n(0), at[1]] : [at[0], n(0)];
      polygon.push(at);
    } else if (command === 'A' || command === 'a') {
      const end: [number, number] = command === 'A' ? [n(5), n(6)] : [at[0] + n(5), at[1] + n(6)];
      polygon.push(...flattenArc(at, end, n(0), n(1), n(3), n(4)));
      at = end;
    } else if (command === 'q' || command === 't') {
      const [x, y] = at;
      const next: [number, number] = command === 'q' ? [x + n(0), y + n(1)] : [2 * x - control[0], 2 * y - control[1]];
      const end: [number, number] = command === 'q' ? [x + n(2), y + n(3)] : [x + n(0), y + n(1)];
      for (let step = 1; step <= 8; step++) polygon.push(quadratic(at, next, end, step / 8));
      control = next;
      at = end;
    } else if (command !== 'z') throw new Error(`unknown command ${command}`);
  }
  return polygons;
};

const quadratic = (p: [number, number], c: [number, number], q: [number, number], t: number): [number, number] => {
  const mix = (axis: 0 | 1) => (1 - t) ** 2 * p[axis] + 2 * t * (1 - t) * c[axis] + t ** 2 * q[axis];
  return [mix(0), mix(1)];
};

const flattenArc = (
  from: [number, number],
  to: [number, number],
  rx: number,
  ry: number,
  large: number,
  sweep: number,
): Polygon => {
  if (rx === 0 || ry === 0) return [to];
  const half = [(from[0] - to[0]) / 2 / rx, (from[1] - to[1]) / 2 / ry] as const;
  const squared = half[0] ** 2 + half[1] ** 2;
  const grow = Math.max(1, Math.sqrt(squared));
  const factor = (large === sweep ? -1 : 1) * Math.sqrt(Math.max(0, (grow * grow) / squared - 1));
  const centre = [factor * half[1], -factor * half[0]] as const;
  const middle = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2] as const;
  const start = Math.atan2(half[1] - centre[1], half[0] - centre[0]);
  const end = Math.atan2(-half[1] - centre[1], -half[0] - centre[0]);
  const full = 2 * Math.PI;
  const turn = sweep === 1 ? (((end - start) % full) + full) % full : -((((start - end) % full) + full) % full);
  return Array.from({ length: 360 }, (_, step) => {
    const angle = start + (turn * (step + 1)) / 360;
    return [middle[0] + rx * (centre[0] + Math.cos(angle)), middle[1] + ry * (centre[1] + Math.sin(angle))];
  });
};

/** Signed area: positive when the points run clockwise on a screen, whose y points down. */
export const areaOf = (polygon: Polygon): number =>
  polygon.reduce((sum, [x, y], index) => {
    const [nextX, nextY] = polygon[(index + 1) % polygon.length] ?? [x, y];
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);

export const centroidOf = (polygon: Polygon): [number, number] => {
  const sums = [0, 0];
  polygon.forEach(([x, y], index) => {
    const [nextX, nextY] = polygon[(index + 1) % polygon.length] ?? [x, y];
    const cross = x * nextY - nextX * y;
    sums[0] = (sums[0] ?? 0) + (x + nextX) * cross;
    sums[1] = (sums[1] ?? 0) + (y + nextY) * cross;
  });
  const area = areaOf(polygon);
  return [(sums[0] ?? 0) / (6 * area), (sums[1] ?? 0) / (6 * area)];
};

/** Applies `rotate(degrees)` and, where it is there, `scale(factor)` of a transform attribute. */
export const applyTransform = (polygon: Polygon, transform: string): Polygon => {
  const degrees = Number(/rotate\((-?[\d.]+)\)/.exec(transform)?.[1] ?? Number.NaN);
  const scale = Number(/scale\((-?[\d.]+)\)/.exec(transform)?.[1] ?? 1);
  const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return polygon.map(([x, y]) => [scale * (x * cos - y * sin), scale * (x * sin + y * cos)]);
};
