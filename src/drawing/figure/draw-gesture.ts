import type { Element } from 'hast';
import { shareElement } from '../shared-elements.ts';
import type { Point } from '../smooth-outline.ts';
import { svgElement } from '../svg-element.ts';
import { figureBox, type Posture } from './body.ts';
import type { Standpoint } from './camera.ts';
import { renderHand, renderHandHalo } from './draw-hand.ts';
import { type DrawnArm, flipArm } from './flip-arm.ts';
import { writeJoinedLimb, writeLimb } from './limb.ts';
import { type Ink, renderArrow, renderInk, renderOpenShape, renderPaper } from './marks.ts';
import type { MoveMark } from './move-mark.ts';
import { inGrains, writeLines, writePath } from './path.ts';
import type { SeenArm, SeenGesture } from './see-gesture.ts';
import { renderTorso } from './torso.ts';

/** A point in the body towards which an armpit opens: outwards from the middle, and down; in drawing units. */
const armpit = { out: 18, y: 190 } as const;

const middleX = figureBox.width / 2;

/**
 * Gives a gesture from its farthest part to its nearest: body, second pose, arms, signs of the move. Each part is drawn
 * the same wherever it is the same, and marked as shared: a page that shows many figures writes it once.
 */
export function renderGesture({ arms, seconds, marks }: SeenGesture, from: Standpoint, posture: Posture): Element[] {
  return [
    renderTorso(from, posture),
    ...seconds.map((arm) => renderArm(arm, 'light')),
    ...arms.map((arm) => renderArm(arm, 'line')),
    ...(marks.length === 0 ? [] : [shareElement(renderMarks(marks))]),
  ];
}

const flip = `translate(${inGrains(figureBox.width)})scale(-1 1)`;

/** Arms are drawn at the left of the picture; one at the right is flipped there, so that it is the same as its mate. */
function renderArm(arm: SeenArm, ink: Ink): Element {
  const isRight = arm.upper.from[0] > middleX;
  const drawn = shareElement(renderInk(ink, listStrokes(isRight ? flipArm(arm) : arm, ink)));
  return isRight ? svgElement('g', { transform: flip }, [drawn]) : drawn;
}

/** Only an arm in full ink has paper round its hand: a second pose lies behind it. */
function listStrokes({ upper, fore, hand }: DrawnArm, ink: Ink): Element[] {
  const { outline, patches, patchWidth } = writeJoinedLimb(upper, [middleX - armpit.out, armpit.y]);
  return [
    ...(ink === 'line' ? renderHandHalo(hand) : []),
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
