import type { Element } from 'hast';
import type { Gesture, GestureSet } from '../../content/types.ts';
import { type FigureView, figureBox, renderFigureParts } from '../../drawing/figure/figure.ts';
import { svgElement } from '../../drawing/svg-element.ts';

/** A drawing that stands once on each page where it is shown, however often. */
export interface SharedFigure {
  /** Unique on a page; the same for the same gesture in views that share a drawing. */
  readonly id: string;
  readonly gesture: Gesture;
  readonly view: FigureView;
  /** True for the drawing of who sits at a table. */
  readonly seated?: true;
}

/**
 * The gesture of a set in a view, to be shared. The id goes by the place of the gesture in the set, since a key may hold
 * letters that an address cannot; a mirrored drawing is the facing one, flipped.
 */
export function shareFigure(key: string, gesture: Gesture, view: FigureView, set: GestureSet): SharedFigure {
  const drawn = view === 'own' ? 'own' : 'facing';
  return { id: `figure-${Object.keys(set.gestures).indexOf(key) + 1}-${drawn}`, gesture, view };
}

/** The same gesture from the same side, done sitting at a table. */
export function seatFigure({ id, gesture, view }: SharedFigure): SharedFigure {
  return { id: `${id}-seated`, gesture, view, seated: true };
}

const VIEW_BOX = `0 0 ${figureBox.width} ${figureBox.height}`;

/** A drawing where it is shown, hidden from screen readers: the cue stands beside it in words. */
export function renderSharedFigure({ id, gesture, view }: SharedFigure): Element {
  const isDrawn = gesture.picture === undefined;
  const flip = isDrawn && view === 'mirror' ? { transform: `matrix(-1 0 0 1 ${figureBox.width} 0)` } : {};
  const className = isDrawn ? ['figure'] : ['figure', 'own-picture'];
  return svgElement('svg', { viewBox: VIEW_BOX, className, ariaHidden: 'true' }, [
    svgElement('use', { href: `#${id}`, ...flip }),
  ]);
}

/** The drawings of a page, for the end of it; nothing when there are none. A drawing that is given twice stands once. */
export function renderFigureStore(figures: readonly SharedFigure[]): Element[] {
  const byId = new Map(figures.map((figure) => [figure.id, figure]));
  if (byId.size === 0) return [];
  return [
    svgElement(
      'svg',
      { className: ['figure-store'], ariaHidden: 'true' },
      Array.from(byId.values(), ({ id, gesture, view, seated = false }) =>
        svgElement(
          'symbol',
          { id, viewBox: VIEW_BOX },
          renderFigureParts(gesture, view === 'own' ? 'own' : 'facing', { seated }),
        ),
      ),
    ),
  ];
}
