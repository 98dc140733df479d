import type { ElementContent } from 'hast';
import { figureBox } from '../../../src/drawing/figure/figure.ts';
import { listPenStrokes, type PenStroke } from './pen-strokes.ts';

/** A picture a pixel a drawing unit; each pixel is the lightness of its colour, 0 to 255, and 255 where nothing is painted. */
export type Picture = Uint8Array;

const { width: WIDTH, height: HEIGHT } = figureBox;

/** Paints a figure, every path over those before it, a path's line before what it fills. */
export const paint = (parts: readonly ElementContent[]): Picture => {
  const picture = new Uint8Array(WIDTH * HEIGHT).fill(255);
  for (const stroke of listPenStrokes(parts)) {
    paintLine(picture, stroke);
    paintShape(picture, stroke);
  }
  return picture;
};

const lightnessOf = (colour: string): number => {
  const [red = 0, green = 0, blue = 0] = (/^#(..)(..)(..)$/.exec(colour.replace(/^#(.)(.)(.)$/, '#$1$1$2$2$3$3')) ?? [])
    .slice(1)
    .map((hex) => Number.parseInt(hex, 16));
  return Math.round(0.2126 * red + 0.7152 * green + 0.0722 * blue);
};

const paintLine = (picture: Picture, { lines, stroke, width }: PenStroke): void => {
  if (stroke === undefined) return;
  const reach = width / 2;
  const lightness = lightnessOf(stroke);
  for (const line of lines) {
    for (let index = 1; index < line.length; index++) {
      const [[fromX, fromY], [toX, toY]] = [line[index - 1] ?? [0, 0], line[index] ?? [0, 0]];
      const [dx, dy] = [toX - fromX, toY - fromY];
      const square = dx * dx + dy * dy;
      for (let y = Math.floor(Math.min(fromY, toY) - reach); y <= Math.max(fromY, toY) + reach; y++) {
        for (let x = Math.floor(Math.min(fromX, toX) - reach); x <= Math.max(fromX, toX) + reach; x++) {
          if (x < 0 || y < 0 || x >= WIDTH || y >= HEIGHT) continue;
          const [offX, offY] = [x + 0.5 - fromX, y + 0.5 - fromY];
          const along = square === 0 ? 0 : Math.max(0, Math.min(1, (offX * dx + offY * dy) / square));
          if (Math.hypot(offX - along * dx, offY - along * dy) <= reach) picture[y * WIDTH + x] = lightness;
        }
      }
    }
  }
};

/** Fills by the nonzero rule, row by row. */
const paintShape = (picture: Picture, { lines, fill }: PenStroke): void => {
  if (fill === undefined) return;
  const lightness = lightnessOf(fill);
  for (let y = 0; y < HEIGHT; y++) {
    const crossings = lines.flatMap((line) => listCrossings(line, y + 0.5)).sort((one, other) => one.x - other.x);
    let winding = 0;
    crossings.forEach(({ x: from, turn }, index) => {
      winding += turn;
      const to = crossings[index + 1]?.x ?? from;
      if (winding === 0) return;
      for (let x = Math.max(0, Math.ceil(from - 0.5)); x + 0.5 <= Math.min(to, WIDTH); x++)
        picture[y * WIDTH + x] = lightness;
    });
  }
};

const listCrossings = (line: PenStroke['lines'][number], y: number): { x: number; turn: 1 | -1 }[] =>
  line.flatMap(([fromX, fromY], index) => {
    const [toX, toY] = line[(index + 1) % line.length] ?? [fromX, fromY];
    if (fromY <= y === toY <= y) return [];
    return [{ x: fromX + ((y - fromY) / (toY - fromY)) * (toX - fromX), turn: fromY <= y ? 1 : -1 }];
  });

/** The share of dark pixels within a distance of a place, 0 to 1. */
export const measureDark = (picture: Picture, [atX, atY]: readonly [number, number], reach: number): number => {
  let [dark, all] = [0, 0];
  for (let y = Math.ceil(atY - reach); y <= atY + reach; y++) {
    for (let x = Math.ceil(atX - reach); x <= atX + reach; x++) {
      if (Math.hypot(x - atX, y - atY) > reach) continue;
      all++;
      if ((picture[y * WIDTH + x] ?? 255) < 96) dark++;
    }
  }
  return dark / all;
};
