import type { Element } from 'hast';
import { shareElement } from '../shared-elements.ts';
import type { Point } from '../smooth-outline.ts';
import { body, figureBox, type Posture, table } from './body.ts';
import type { Standpoint } from './camera.ts';
import { renderInk, renderLine, renderOpenShape, renderShape, widths } from './marks.ts';
import { type Step, writeCircle, writeDot, writePath } from './path.ts';

type Curve = readonly [by: Point, to: Point];

/** Curves of one half of a shape from below up; x is outwards from the middle of the body. */
type HalfOutline = readonly [start: Point, ...curves: readonly Curve[]];

/** Waist, armpit, shoulder and neck, up under the head. */
const waistUp: readonly Curve[] = [
  [
    [33, 230],
    [38, 206],
  ],
  [
    [42, 187],
    [48.5, 171],
  ],
  [
    [51, 158],
    [45.5, 142.6],
  ],
  [
    [37, 139.8],
    [26, 136.5],
  ],
  [
    [11.5, 133],
    [10.5, 124],
  ],
  [
    [10.5, 118],
    [10.5, 110],
  ],
];

/** The sides below the waist: to the hips, or to the table. */
const bodyHalf: Readonly<Record<Posture, HalfOutline>> = {
  standing: [
    [38, 292],
    [
      [38, 270],
      [35.5, 250],
    ],
    ...waistUp,
  ],
  seated: [
    [36.5, table.top],
    [
      [36, 256],
      [35.5, 250],
    ],
    ...waistUp,
  ],
};

/** Chin, cheek, temple and crown. */
const headHalf: HalfOutline = [
  [0, 126],
  [
    [11, 126],
    [18.5, 117],
  ],
  [
    [26.5, 107.5],
    [26.5, 92],
  ],
  [
    [26.5, 78.5],
    [19.5, 70],
  ],
  [
    [12.5, 62],
    [0, 62],
  ],
];

const middleX = figureBox.width / 2;

function at(out: number, y: number): Point {
  return [middleX + out, y];
}

/** One half upwards and its mirror image downwards. */
function writeBothHalves(half: HalfOutline, closed: boolean): string {
  const [start, ...curves] = half;
  const corners = [start, ...curves.map(([, to]) => to)];
  const [topOut, topY] = corners.at(-1) ?? start;
  const up: Step[] = curves.map(([by, to]) => ({ by: at(-by[0], by[1]), to: at(-to[0], to[1]) }));
  const down: Step[] = curves.map(([by], index) => ({ by: at(...by), to: at(...(corners[index] ?? start)) }));
  const across: Step[] = topOut === 0 ? [] : [{ to: at(topOut, topY) }];
  return writePath(at(-start[0], start[1]), [...up, ...across, ...down.reverse()], closed);
}

function onBothSides(out: number, y: number, write: (point: Point) => string): string {
  return write(at(-out, y)) + write(at(out, y));
}

const { shoulder, head } = body;
const shoulders = onBothSides(shoulder.x, shoulder.y, (point) => writeCircle(point, shoulder.radius));
const bodyPath: Readonly<Record<Posture, string>> = {
  standing: writeBothHalves(bodyHalf.standing, false) + shoulders,
  seated: writeBothHalves(bodyHalf.seated, false) + shoulders,
};
const headPath = onBothSides(26, head.y + 3, (point) => writeCircle(point, 4)) + writeBothHalves(headHalf, true);
const eyes = onBothSides(9, head.y + 1, writeDot);
const mouth = writePath(at(-6, head.y + 14), [{ by: at(0, head.y + 18.5), to: at(6, head.y + 14) }]);
const tablePath = writeTable();

/** A slab with round edges. */
function writeTable(): string {
  const { halfWidth, top, thickness } = table;
  const [bottom, radius] = [top + thickness, thickness / 2];
  const steps = [
    { to: at(halfWidth, top) },
    { to: at(halfWidth, bottom), radius },
    { to: at(-halfWidth, bottom) },
    { to: at(-halfWidth, top), radius },
  ];
  return writePath(at(-halfWidth, top), steps, true);
}

/**
 * Gives body and head: open below, or behind a table. From the front a face in four strokes tells that the leader looks
 * at the class; from behind there is none, and the lines are light, for the body is looked through at the hands. The
 * same element each time, which is shared and must not be changed.
 */
export function renderTorso(from: Standpoint, posture: Posture): Element {
  return torsos[from][posture];
}

const torsos: Readonly<Record<Standpoint, Readonly<Record<Posture, Element>>>> = {
  front: { standing: drawTorso('front', 'standing'), seated: drawTorso('front', 'seated') },
  behind: { standing: drawTorso('behind', 'standing'), seated: drawTorso('behind', 'seated') },
};

function drawTorso(from: Standpoint, posture: Posture): Element {
  const shapes = [renderOpenShape(bodyPath[posture]), renderShape(headPath)];
  if (posture === 'seated') shapes.push(renderShape(tablePath));
  if (from === 'behind') return shareElement(renderInk('light', shapes));
  return shareElement(renderInk('line', [...shapes, renderLine(eyes, widths.eye), renderLine(mouth, widths.face)]));
}
