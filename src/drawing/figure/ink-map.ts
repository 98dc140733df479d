import type { Point } from '../smooth-outline.ts';
import { figureBox } from './body.ts';
import { widths } from './marks.ts';
import { measureSquare } from './place-mark.ts';
import type { SeenArm, SeenGesture } from './see-gesture.ts';

/** Side of a cell in drawing units: a millimetre at a height of 3 cm, of a size with a finger. */
const cell = 10;
const columns = Math.ceil(figureBox.width / cell);
const rows = Math.ceil(figureBox.height / cell);

/**
 * How dark things are: a solid hand is ink, an outlined one about half of it, an arm, wide and outlined, a quarter; the
 * second pose half as dark. An arrow is as dark as ink, though narrow.
 */
const darkness = { back: 1, palm: 0.5, edge: 0.5, arm: 0.25, light: 0.5, mark: 1 } as const;

interface Stroke {
  readonly points: readonly Point[];
  readonly radius: number;
  readonly dark: number;
}

/** How dark each cell of a coarse grid is, 0 to 1, row by row, and the sum of all. */
export interface InkMap {
  readonly cells: Float32Array;
  readonly whole: number;
}

/**
 * Gives how dark each cell of a coarse grid is, 0 to 1, by the ink of what the hands do: arms, hands, second pose and
 * arrows. The body and an arm that hangs are left out, since they tell no gesture from another.
 */
export function mapInk({ arms, seconds, marks }: SeenGesture): InkMap {
  const cells = new Float32Array(columns * rows);
  const strokes = [
    ...seconds.flatMap((arm) => listStrokes(arm, darkness.light)),
    ...arms.flatMap((arm) => (arm.placed.shape === 'resting' ? [] : listStrokes(arm, 1))),
    ...marks.flatMap(({ lines }) =>
      lines.map((line) => ({
        points: line.filter((_, index) => index % 2 === 0 || index === line.length - 1),
        radius: widths.arrow,
        dark: darkness.mark,
      })),
    ),
    ...marks.flatMap(({ heads }) => heads.map(({ tip }) => ({ points: [tip, tip], radius: 6, dark: darkness.mark }))),
  ];
  for (const stroke of strokes) paint(cells, stroke);
  return { cells, whole: cells.reduce((sum, dark) => sum + dark, 0) };
}

function listStrokes({ upper, fore, hand }: SeenArm, share: number): Stroke[] {
  const arm = darkness.arm * share;
  const dark = darkness[hand.face] * share;
  return [
    { points: [upper.from, upper.to], radius: upper.toRadius, dark: arm },
    { points: [fore.from, fore.to], radius: fore.toRadius + widths.line, dark: arm },
    { points: hand.spine, radius: widths.flat, dark },
    ...hand.digits.map(({ points, width }) => ({
      points: bendOnce(points),
      radius: width / 2 + widths.handLine,
      dark,
    })),
  ];
}

/** Root, first joint and tip: on so coarse a grid the others would be lost. */
function bendOnce(points: readonly Point[]): Point[] {
  return [...points.slice(0, 2), ...points.slice(-1)];
}

/** What is nearer hides what is farther; at the edge of a stroke a cell is covered in part. */
function paint(cells: Float32Array, { points, radius, dark }: Stroke): void {
  const reach = radius + cell / 2;
  for (let index = 1; index < points.length; index++) {
    const [from, to] = [points[index - 1], points[index]];
    if (from === undefined || to === undefined) continue;
    const first = (axis: 0 | 1) => Math.max(0, Math.floor((Math.min(from[axis], to[axis]) - reach) / cell));
    const last = (axis: 0 | 1, count: number) =>
      Math.min(count - 1, Math.floor((Math.max(from[axis], to[axis]) + reach) / cell));
    for (let row = first(1); row <= last(1, rows); row++) {
      for (let column = first(0); column <= last(0, columns); column++) {
        const off = Math.sqrt(measureSquare((column + 0.5) * cell, (row + 0.5) * cell, from, to));
        const cover = Math.min(1, Math.max(0, (reach - off) / cell));
        const at = row * columns + column;
        if (cover > 0) cells[at] = (cells[at] ?? 0) * (1 - cover) + dark * cover;
      }
    }
  }
}

/**
 * Gives the share of the ink of two maps that does not lie together: 0 for equal ones, to 1.
 * @param enough where the two have so different amounts of ink that their share must reach this, 1 is given unlooked
 */
export function compareInk(one: InkMap, other: InkMap, enough = 1): number {
  const most = Math.max(one.whole, other.whole);
  if (most === 0) return 0;
  if (1 - Math.min(one.whole, other.whole) / most > enough) return 1;
  let apart = 0;
  for (let index = 0; index < one.cells.length; index++) {
    apart += Math.abs((one.cells[index] ?? 0) - (other.cells[index] ?? 0));
  }
  // What lies together and what lies apart make up the larger of each two cells.
  return (2 * apart) / (one.whole + other.whole + apart);
}
