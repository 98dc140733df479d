import type { Element, ElementContent } from 'hast';
import type { Gesture } from '../../content/types.ts';
import { svgElement } from '../svg-element.ts';
import { figureBox, type Posture } from './body.ts';
import type { Standpoint } from './camera.ts';
import { renderGesture } from './draw-gesture.ts';
import { renderDrawing } from './marks.ts';
import { grainUnits } from './path.ts';
import { type SeenGesture, seeGesture } from './see-gesture.ts';

export { listAlikeGestures } from './alike.ts';
export { figureBox } from './body.ts';

/**
 * From where the figure is seen. `facing`: the leader faces the viewer, so that the leader's right hand is at the
 * viewer's left. `own`: as you see your own hands, your right hand at the right, and the other side of each hand.
 * `mirror`: a leader who faces the class and leads mirrored, which is `facing` flipped left to right.
 */
export type FigureView = 'facing' | 'own' | 'mirror';

/** What a figure's drawing depends on beside gesture and view. */
export interface FigureOptions {
  /** True to draw the leader sitting at a table, hands no higher than the face; false when absent. */
  readonly seated?: boolean;
  /** Path from the page to the pack's pictures, with a slash at its end; `images/` when absent. */
  readonly imageFolder?: string;
}

/** Parts drawn once for what is seen; they must not be changed. */
const drawn = new WeakMap<SeenGesture, readonly Element[]>();

/**
 * Draws a gesture within the figure box, for placing in a larger picture.
 * The dark pose is the written one, on the beat; a light one is the other end of its move, and the arrow runs the way the
 * hand goes. The same gesture object gives the same parts again, which must not be changed. A gesture with a picture of
 * the author's is that picture in the same box, in all views.
 */
export function renderFigureParts(gesture: Gesture, view: FigureView, options: FigureOptions = {}): ElementContent[] {
  const { seated = false, imageFolder = 'images/' } = options;
  if (gesture.picture !== undefined) {
    return [svgElement('image', { href: `${imageFolder}${gesture.picture.packName}`, ...figureBox })];
  }
  const parts = drawOnce(gesture, view === 'own' ? 'behind' : 'front', seated ? 'seated' : 'standing');
  const transform = `scale(${grainUnits})`;
  return [
    renderDrawing(
      view === 'mirror' ? `translate(${figureBox.width})scale(-${grainUnits} ${grainUnits})` : transform,
      parts,
    ),
  ];
}

function drawOnce(gesture: Gesture, from: Standpoint, posture: Posture): readonly Element[] {
  const seen = seeGesture(gesture, from, posture);
  const parts = drawn.get(seen) ?? renderGesture(seen, from, posture);
  drawn.set(seen, parts);
  return parts;
}

/** Draws a gesture as a picture of its own, hidden from screen readers: the cue stands beside it in words. */
export function renderFigure(gesture: Gesture, view: FigureView, options: FigureOptions = {}): Element {
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${figureBox.width} ${figureBox.height}`,
      className: ['figure'],
      ariaHidden: 'true',
    },
    renderFigureParts(gesture, view, options),
  );
}
