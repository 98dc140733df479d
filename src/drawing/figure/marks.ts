import type { Element } from 'hast';
import { svgElement } from '../svg-element.ts';
import { inTenths } from './path.ts';

/** Colours for a figure that stands alone; the classes let a page's styles change them. */
const colours = { line: '#1D2433', light: '#868D9A', paper: '#FFFEFB', move: '#9C3F12' } as const;

/** Widths of the pen in drawing units. At a height of 3 cm a unit is close to a tenth of a millimetre. */
export const widths = {
  line: 3,
  lightLine: 1.9,
  handLine: 2.2,
  ridge: 3.2,
  crease: 1.4,
  face: 2.2,
  eye: 4.2,
  finger: 4.9,
  thumb: 5.8,
  flat: 11,
  /** Paper between the fingers of a solid hand. */
  gap: 1.4,
  /** Paper round what must not merge with what lies behind it. */
  halo: 3,
  arrow: 2.8,
} as const;

/** The ink of a group: full for what is done, light for the second pose and for a body that is looked through. */
export type Ink = 'line' | 'light';

/** Gives a group drawn in one ink: all its lines that say nothing else. */
export function renderInk(ink: Ink, children: readonly Element[]): Element {
  return svgElement('g', { className: [`figure-${ink}`], stroke: colours[ink] }, children);
}

/** Gives a whole drawing of tenths of units, with a round pen whose lines lie behind what they fill. */
export function renderDrawing(transform: string, children: readonly Element[]): Element {
  const pen = { fill: 'none', strokeLinejoin: 'round', strokeLinecap: 'round', paintOrder: 'stroke' };
  return svgElement('g', { transform, ...pen }, children);
}

/** Gives a line in the ink of its group. */
export function renderLine(d: string, widthUnits: number): Element {
  return svgElement('path', { d, strokeWidth: inTenths(widthUnits) });
}

/** Gives a line of paper, which parts what it crosses. */
export function renderPaper(d: string, widthUnits: number): Element {
  return svgElement('path', {
    className: ['figure-paper'],
    d,
    stroke: colours.paper,
    strokeWidth: inTenths(widthUnits),
  });
}

/**
 * Gives a shape of paper with a line round it, in the ink of its group. The outlines of one path grow together to one
 * shape; the line stands outside of it, and where an outline is left open there is none.
 */
export function renderShape(d: string, widthUnits: number): Element {
  const pen = { strokeWidth: 2 * inTenths(widthUnits), strokeLinecap: 'butt' };
  return svgElement('path', { className: ['figure-body'], d, fill: colours.paper, ...pen });
}

/** Gives the sign of a move: lines, and solid heads. */
export function renderArrow(lines: string, heads: string): Element[] {
  const solid = heads === '' ? [] : [svgElement('path', { className: ['figure-head'], d: heads, fill: colours.move })];
  return [
    renderPaper(lines + heads, widths.arrow + 2 * widths.halo),
    svgElement('g', { className: ['figure-move'], stroke: colours.move }, [renderLine(lines, widths.arrow), ...solid]),
  ];
}
