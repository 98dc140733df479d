import type { Element } from 'hast';
import type { Point } from '../smooth-outline.ts';
import { figureBox, type Posture } from './body.ts';
import type { Standpoint } from './camera.ts';
import { renderHand, renderHandHalo } from './draw-hand.ts';
import { writeJoinedLimb, writeLimb } from './limb.ts';
import { type Ink, renderArrow, renderInk, renderPaper, renderShape, widths } from './marks.ts';
import type { MoveMark } from './move-mark.ts';
import { writeLine } from './path.ts';
import type { SeenArm, SeenGesture } from './see-gesture.ts';
import { renderTorso } from './torso.ts';

/** A point in the body towards which an armpit opens: outwards from the middle, and down; in drawing units. */
const armpit = { out: 18, y: 190 } as const;

/** Gives a gesture from its farthest part to its nearest: body, second pose, arms, signs of the move. */
export function renderGesture({ arms, seconds, marks }: SeenGesture, from: Standpoint, posture: Posture): Element[] {
  const light =
    seconds.length === 0
      ? []
      : [
          renderInk(
            'light',
            seconds.flatMap((arm) => renderArm(arm, 'light')),
          ),
        ];
  const dark = renderInk(
    'line',
    arms.flatMap((arm) => [...renderHandHalo(arm.hand), ...renderArm(arm, 'line')]),
  );
  return [renderTorso(from, posture), ...light, dark, ...(marks.length === 0 ? [] : renderMarks(marks))];
}

function renderArm({ upper, fore, hand }: SeenArm, ink: Ink): Element[] {
  const middleX = figureBox.width / 2;
  const inside: Point = [middleX + (upper.from[0] < middleX ? -armpit.out : armpit.out), armpit.y];
  const { outline, patches, patchWidth } = writeJoinedLimb(upper, inside);
  return [
    renderShape(outline + writeLimb(fore), ink === 'light' ? widths.lightLine : widths.line),
    ...(patches === '' ? [] : [renderPaper(patches, patchWidth)]),
    ...renderHand(hand, ink),
  ];
}

const headLength = 10;
const headHalfWidth = 5.4;

function renderMarks(marks: readonly MoveMark[]): Element[] {
  const lines = marks.flatMap((mark) => mark.lines.map((line) => writeLine(line)));
  return renderArrow(lines.join(''), marks.flatMap(({ heads }) => heads.map(writeHead)).join(''));
}

/** A solid triangle whose middle is at the end of the line. */
function writeHead({ from, tip }: MoveMark['heads'][number]): string {
  const length = Math.max(0.1, Math.hypot(tip[0] - from[0], tip[1] - from[1]));
  const [x, y] = [(tip[0] - from[0]) / length, (tip[1] - from[1]) / length];
  const at = (ahead: number, aside: number): Point => [tip[0] + ahead * x - aside * y, tip[1] + ahead * y + aside * x];
  return writeLine(
    [at(headLength / 2, 0), at(-headLength / 2, headHalfWidth), at(-headLength / 2, -headHalfWidth)],
    true,
  );
}
