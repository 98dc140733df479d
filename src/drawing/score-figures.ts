import type { Element, ElementContent } from 'hast';
import { type FigureView, figureBox, renderFigureParts } from './figure/figure.ts';
import { roundTo } from './round.ts';
import { mm, scoreColours } from './score-marks.ts';
import type { PlacedRow } from './score-row.ts';
import { svgElement } from './svg-element.ts';

/** Gives the figures of a row as they are seen from one side; a night without a gesture has a rest. */
export function renderFigures({ frame, nights }: PlacedRow, view: FigureView): ElementContent[] {
  const { layout, heights } = frame;
  if (layout.figureHeight === 0) return [];
  const size = layout.figureHeight / figureBox.height;
  return nights.map(({ night, x }) => {
    if (night.gesture === undefined) return renderRest(x, heights.figure + 0.62 * layout.figureHeight, layout.scale);
    const transform = `translate(${mm(x - (size * figureBox.width) / 2)} ${mm(heights.figure)}) scale(${roundTo(size, 5)})`;
    return svgElement('g', { transform }, renderFigureParts(night.gesture, view));
  });
}

function renderRest(x: number, y: number, scale: number): Element {
  const [width, height] = [5 * scale, 1.5 * scale];
  const box = { x: mm(x - width / 2), y: mm(y), width: mm(width), height: mm(height) };
  return svgElement('rect', { className: ['score-rest'], ...box, fill: scoreColours.soft });
}
