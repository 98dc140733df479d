import type { Element } from 'hast';
import { shareElement } from '../shared-elements.ts';
import type { Point } from '../smooth-outline.ts';
import { svgElement } from '../svg-element.ts';
import { figureBox, type Posture } from './body.ts';
import type { Standpoint } from './camera.ts';
import { renderHand, renderHandHalo } from './draw-hand.ts';
import { writeJoinedLimb, writeLimb } from './limb.ts';
import { type Ink, renderArrow, renderInk, renderOpenShape, renderPaper } from './marks.ts';
import type { MoveMark } from './move-mark.ts';
import { inGrains, writeLines, writePath } from './path.ts';
import type { PlacedHand } from './placing.ts';
import { type SeenArm, type SeenGesture, seeArm } from './see-gesture.ts';
import { renderTorso } from './torso.ts';

/** A point in the body towards which an armpit opens: outwards from the middle, and down; in drawing units. */
const armpit = { out: 18, y: 190 } as const;

const middleX = figureBox.width / 2;

/**
 * Gives a gesture from its farthest part to its nearest: body, second pose, arms, signs of the move. Parts are marked as
 * shared, and written alike where they look alike: a page that shows many figures writes each of them once.
 */
export function renderGesture({ arms, seconds, marks }: SeenGesture, from: Standpoint, posture: Posture): Element[] {
  return [
    renderTorso(from, posture),
    ...seconds.map(({ placed }) => renderArm(placed, from, 'light')),
    ...arms.map(({ placed }) => renderArm(placed, from, 'line')),
    ...(marks.length === 0 ? [] : [shareElement(renderMarks(marks))]),
  ];
}

/** A left arm is drawn once for each standpoint and ink. */
const drawn = {
  'front line': new WeakMap<PlacedHand, Element>(),
  'front light': new WeakMap<PlacedHand, Element>(),
  'behind line': new WeakMap<PlacedHand, Element>(),
  'behind light': new WeakMap<PlacedHand, Element>(),
};

const flip = `translate(${inGrains(figureBox.width)})scale(-1 1)`;

/** A right arm is the left one that it mirrors, flipped. */
function renderArm(placed: PlacedHand, from: Standpoint, ink: Ink): Element {
  if (placed.mirrors !== undefined) {
    return svgElement('g', { transform: flip }, [renderArm(placed.mirrors, from, ink)]);
  }
  const memo = drawn[`${from} ${ink}`];
  const arm = memo.get(placed) ?? shareElement(renderInk(ink, listStrokes(seeArm(placed, from), ink)));
  memo.set(placed, arm);
  return arm;
}

/** Only an arm in full ink has paper round its hand: a second pose lies behind all else. */
function listStrokes({ upper, fore, hand }: SeenArm, ink: Ink): Element[] {
  const inside: Point = [middleX + (upper.from[0] < middleX ? -armpit.out : armpit.out), armpit.y];
  const { outline, patches, patchWidth } = writeJoinedLimb(upper, inside);
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
