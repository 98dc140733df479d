import type { Element } from 'hast';
import { svgElement } from '../../drawing/svg-element.ts';

/** Half the width of the disc in CSS pixels: as wide as a hand draws at ease, 42 mm on paper. */
const RADIUS_PX = 80;
const RIM_WIDTH_PX = 2;

/** An empty disc to draw the Moon in, as a picture of its own. @param words What it is, for who does not see it. */
export function renderEmptyDisc(words: string): Element {
  const size = 2 * RADIUS_PX;
  return svgElement(
    'svg',
    { viewBox: `0 0 ${size} ${size}`, width: size, height: size, role: 'img', ariaLabel: words },
    [
      svgElement('circle', {
        cx: RADIUS_PX,
        cy: RADIUS_PX,
        r: RADIUS_PX - RIM_WIDTH_PX,
        fill: '#FFFEFB',
        stroke: '#1D2433',
        strokeWidth: RIM_WIDTH_PX,
      }),
    ],
  );
}
