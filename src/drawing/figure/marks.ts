import type { Element } from 'hast';
import { svgElement } from '../svg-element.ts';
import { inGrains } from './path.ts';

/** Colours for a figure that stands alone, on white paper; a page's styles change them. */
const colours = { line: '#1D2433', light: '#868D9A', paper: '#fff', move: '#9C3F12' } as const;

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
  gap: 1.5,
  /** Paper round what must not merge with what lies behind it. */
  halo: 3,
  arrow: 2.8,
} as const;

/** The ink of a group: full for what is done, light for the second pose and for a body that is looked through. */
export type Ink = 'line' | 'light';

/** Gives a group drawn in one ink: all its lines that say nothing else. */
export function renderInk(ink: Ink, children: readonly Element[]): Element {
  const width = ink === 'light' ? { strokeWidth: shapePen(widths.lightLine) } : {};
  return svgElement('g', { className: [`figure-${ink}`], stroke: colours[ink], ...width }, children);
}

/** The line of a shape is half hidden. */
function shapePen(lineUnits: number): number {
  return inGrains(2 * lineUnits);
}

/** Gives a whole drawing of grains, with a round pen for shapes whose lines lie behind what they fill. */
export function renderDrawing(transform: string, children: readonly Element[]): Element {
  const round = { strokeLinejoin: 'round', strokeLinecap: 'round' };
  const pen = { fill: 'none', strokeWidth: shapePen(widths.line), ...round, paintOrder: 'stroke' };
  return svgElement('g', { transform, ...pen }, children);
}

/** Gives a line in the ink of its group. */
export function renderLine(d: string, widthUnits: number): Element {
  return svgElement('path', { d, strokeWidth: inGrains(widthUnits) });
}

/** Gives a line of paper, which parts what it crosses: the styles know it by having a stroke of its own. */
export function renderPaper(d: string, widthUnits: number): Element {
  return svgElement('path', { d, stroke: colours.paper, strokeWidth: inGrains(widthUnits) });
}

/**
 * Gives a shape of paper with a line round it, in the ink and width of its group. The outlines of one path grow together
 * to one shape, and the line stands outside of it. The styles know it by its fill.
 */
export function renderShape(d: string): Element {
  return svgElement('path', { d, fill: colours.paper });
}

/** Gives the same where outlines are left open: their lines end there without a cap. */
export function renderOpenShape(d: string): Element {
  return svgElement('path', { d, fill: colours.paper, strokeLinecap: 'butt' });
}

/** Gives the sign of a move: lines, and solid heads. */
export function renderArrow(lines: string, heads: string): Element {
  return svgElement('g', { className: ['figure-move'], stroke: colours.move }, [
    renderPaper(heads + lines, widths.arrow + 2 * widths.halo),
    renderLine(lines, widths.arrow),
    ...(heads === '' ? [] : [svgElement('path', { d: heads, fill: colours.move, strokeWidth: 1 })]),
  ]);
}
