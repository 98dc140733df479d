import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import { svgElement } from '../../drawing/svg-element.ts';

/** Half the width of the disc in CSS pixels: 42 mm across on paper, as wide as a child's hand draws at ease. By eye. */
const RADIUS_PX = 79;
const LINE_PX = 2;

/** A circle to draw the Moon in, with an arrow over it that says which way is up, and names no direction of the sky. */
export function renderEmptyDisc(labels: Labels): Element {
  const size = 2 * (RADIUS_PX + LINE_PX / 2);
  return h('p', { className: ['disc'] }, [
    h('span', { className: ['disc-up'], ariaHidden: 'true' }, `↑ ${labels.text('disc-up')}`),
    svgElement(
      'svg',
      {
        xmlns: 'http://www.w3.org/2000/svg',
        className: ['empty-disc'],
        viewBox: `0 0 ${size} ${size}`,
        width: size,
        height: size,
        role: 'img',
        ariaLabel: labels.text('empty-disc'),
      },
      [svgElement('circle', { cx: size / 2, cy: size / 2, r: RADIUS_PX })],
    ),
  ]);
}
