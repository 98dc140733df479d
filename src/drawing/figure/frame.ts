import type { Arm } from './arm.ts';
import { figureBox, outwardX, type Posture, table } from './body.ts';
import type { Standpoint } from './camera.ts';
import type { DrawnShape } from './hand-shape.ts';
import { widths } from './marks.ts';
import { type SeenHand, seeHand } from './see-hand.ts';

/** Space that stays free along the edges of the box, in drawing units. */
const frameMargin = 3;

/** No part of a hand is farther from its wrist, in drawing units. */
const reach = 66;

const standpoints: readonly Standpoint[] = ['front', 'behind'];

/**
 * Measures how far a hand stands out of the frame, seen from either side: outwards, and downwards (upwards is negative),
 * in drawing units. 0 means that it is within. Who sits has the table for a floor.
 */
export function findOverhang(arm: Arm, shape: DrawnShape, posture: Posture): readonly [outwards: number, down: number] {
  let [over, above, below] = [0, 0, 0];
  const [x, y] = [outwardX[arm.side] * arm.wrist[0], arm.wrist[1]];
  const { width } = figureBox;
  const floor = posture === 'seated' ? table.top : figureBox.height - frameMargin;
  // Most hands are so far from the edges that they need not be looked at.
  const near = reach + frameMargin;
  if (x < width / 2 - near && y > near && y < floor - reach) return [0, 0];
  for (const from of standpoints) {
    for (const [pointX, pointY] of listOuterPoints(seeHand(arm, shape, from))) {
      over = Math.max(over, Math.abs(pointX - width / 2) - (width / 2 - frameMargin));
      above = Math.max(above, frameMargin - pointY);
      below = Math.max(below, pointY - floor);
    }
  }
  return [over, below - above];
}

/** Corners of squares round the lines of a hand, ink included. */
function listOuterPoints(hand: SeenHand): (readonly [number, number])[] {
  const round = (points: SeenHand['flat'], width: number) => {
    const reach = width / 2 + widths.handLine;
    return points.flatMap(([x, y]) => [[x - reach, y - reach] as const, [x + reach, y + reach] as const]);
  };
  return [...hand.digits.flatMap(({ points, width }) => round(points, width)), ...round(hand.flat, widths.flat)];
}
