import type { Element } from 'hast';
import { encode } from 'uqr';
import { roundTo } from './round.ts';
import { svgElement } from './svg-element.ts';

/** White modules around a code that a reader needs: ISO/IEC 18004, from memory. */
const quietModules = 4;

/** Least sizes in print: of the code without its white margin, and of a module. Common practice, no source. */
const leastSizeMm = 25;
const leastModuleMm = 0.5;

/**
 * Gives a link as a code for the camera of a phone: a QR code with error correction M, or better where that costs no
 * space, in black on white whatever the page's colours, with its white margin. At least 25 mm wide within the margin.
 * It is hidden from screen readers: the address must stand beside it in words.
 * @param link up to about 2,300 bytes in UTF-8
 * @throws RangeError when the link is longer
 */
export function renderCode(link: string): Element {
  const { data, size } = encode(link, { ecc: 'M', boostEcc: true, border: 0 });
  const whole = size + 2 * quietModules;
  const sideMm = roundTo(whole * Math.max(leastModuleMm, leastSizeMm / size), 1);
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `${-quietModules} ${-quietModules} ${whole} ${whole}`,
      width: `${sideMm}mm`,
      height: `${sideMm}mm`,
      className: ['code'],
      shapeRendering: 'crispEdges',
      ariaHidden: 'true',
    },
    [
      svgElement('rect', { x: -quietModules, y: -quietModules, width: whole, height: whole, fill: '#fff' }),
      svgElement('path', { d: data.flatMap(drawRuns).join(''), fill: '#000' }),
    ],
  );
}

/** The black stretches of a row, each a flat box. */
function drawRuns(modules: readonly boolean[], y: number): string[] {
  const runs: string[] = [];
  let from = 0;
  for (let x = 1; x <= modules.length; x++) {
    if (modules[x] === modules[from]) continue;
    if (modules[from] === true) runs.push(`M${from} ${y}h${x - from}v1h${from - x}z`);
    from = x;
  }
  return runs;
}
