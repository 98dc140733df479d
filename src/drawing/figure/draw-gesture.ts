import type { Element } from 'hast';
import type { Point } from '../smooth-outline.ts';
import { figureBox, type Posture } from './body.ts';
import type { Standpoint } from './camera.ts';
import { renderHand, renderHandHalo } from './draw-hand.ts';
import { writeJoinedLimb, writeLimb } from './limb.ts';
import { type Ink, joinStrokes, renderArrow, renderInk, renderOpenShape, renderPaper, widths } from './marks.ts';
import type { MoveMark } from './move-mark.ts';
import { writeLines, writePath } from './path.ts';
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
            joinArms(seconds, (arm) => renderArm(arm, 'light')),
          ),
        ];
  const dark = renderInk(
    'line',
    joinArms(arms, (arm) => [...renderHandHalo(arm.hand), ...renderArm(arm, 'line')]),
  );
  return [renderTorso(from, posture), ...light, dark, ...(marks.length === 0 ? [] : [renderMarks(marks)])];
}

/** Arms that lie apart are drawn in the same strokes. */
function joinArms(arms: readonly SeenArm[], render: (arm: SeenArm) => Element[]): Element[] {
  const [far, near] = arms;
  if (far === undefined || near === undefined || !lieApart(far, near)) return arms.flatMap(render);
  return joinStrokes(render(far), render(near));
}

/** Tells whether not even their halos meet: one is to the left of the other. */
function lieApart(one: SeenArm, other: SeenArm): boolean {
  const [oneLeft, oneRight] = findSpan(one);
  const [otherLeft, otherRight] = findSpan(other);
  return oneRight < otherLeft || otherRight < oneLeft;
}

/** How far an arm, its lines and the halo of its hand reach to the left and right. */
function findSpan({ upper, fore, hand }: SeenArm): [left: number, right: number] {
  const span: [number, number] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  const widen = (x: number, reach: number) => {
    span[0] = Math.min(span[0], x - reach);
    span[1] = Math.max(span[1], x + reach);
  };
  for (const { from, fromRadius } of [upper, fore]) widen(from[0], fromRadius + widths.line);
  const aroundHand = widths.flat / 2 + widths.handLine + widths.halo;
  for (const [x] of hand.flat) widen(x, aroundHand);
  for (const { points } of hand.digits) for (const [x] of points) widen(x, aroundHand);
  return span;
}

function renderArm({ upper, fore, hand }: SeenArm, ink: Ink): Element[] {
  const middleX = figureBox.width / 2;
  const inside: Point = [middleX + (upper.from[0] < middleX ? -armpit.out : armpit.out), armpit.y];
  const { outline, patches, patchWidth } = writeJoinedLimb(upper, inside);
  return [
    renderOpenShape(outline + writeLimb(fore)),
    ...(patches === '' ? [] : [renderPaper(patches, patchWidth)]),
    ...renderHand(hand, ink),
  ];
}

const headLength = 10;
const headHalfWidth = 5.4;

function renderMarks(marks: readonly MoveMark[]): Element {
  const lines = marks.flatMap(({ runs }) => runs.map(({ start, steps }) => writePath(start, steps)));
  const heads = marks.flatMap((mark) => mark.heads.map(outlineHead));
  return renderArrow(lines.join(''), writeLines(heads, true));
}

/** A solid triangle whose middle is at the end of the line. */
function outlineHead({ from, tip }: MoveMark['heads'][number]): Point[] {
  const length = Math.max(0.1, Math.hypot(tip[0] - from[0], tip[1] - from[1]));
  const [x, y] = [(tip[0] - from[0]) / length, (tip[1] - from[1]) / length];
  const at = (ahead: number, aside: number): Point => [tip[0] + ahead * x - aside * y, tip[1] + ahead * y + aside * x];
  return [at(headLength / 2, 0), at(-headLength / 2, headHalfWidth), at(-headLength / 2, -headHalfWidth)];
}
