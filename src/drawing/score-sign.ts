import type { Element } from 'hast';
import { type MoonFace, renderMoonParts, renderSeasOnce } from './moon.ts';
import { renderBeat, scoreColours } from './score-marks.ts';
import { svgElement } from './svg-element.ts';

/** One night as it stands on a stave that goes on from sign to sign. */
export interface ScoreSign {
  readonly moon: MoonFace;
  /** 1-based place within the group. */
  readonly count: number;
  readonly strong: boolean;
  /** True for the last night of a group: a bar line ends it. */
  readonly last: boolean;
}

/** The box of a sign in drawing units, and where its parts are. */
const box = { width: 100, height: 58 } as const;
const middle = { x: 50, moonY: 37, beatY: 7.4 } as const;
const moonRadius = 19;
const reach = moonRadius + 2;

/**
 * Gives a night's beat and Moon on its piece of the stave, as a picture of its own which is hidden from screen readers:
 * its words stand below. A bar line comes before the first night of a group.
 * @param seasId id of the path of the lunar seas, which stands once on a page
 * @param drawsSeas true for the sign that holds this path
 */
export function renderScoreSign(sign: ScoreSign, seasId: string, drawsSeas: boolean): Element {
  const { width, height } = box;
  const { x, moonY, beatY } = middle;
  const lines = `M0 ${moonY}H${x - reach - 2}M${x + reach + 2} ${moonY}H${width}`;
  // Half of a bar line lies within the box: where a group follows another on a line, the two halves make one.
  const begins = sign.strong ? `M0 0V${moonY + reach}` : '';
  const ends = sign.last ? `M${width} ${moonY - reach}V${moonY + reach}` : '';
  const stroke = { className: ['score-stroke'], fill: 'none', stroke: scoreColours.ink };
  return svgElement('svg', { viewBox: `0 0 ${width} ${height}`, className: ['score-sign'], ariaHidden: 'true' }, [
    ...(drawsSeas ? [svgElement('defs', {}, [renderSeasOnce(seasId)])] : []),
    svgElement('path', { ...stroke, d: lines, strokeWidth: 1.4 }),
    ...(begins + ends === '' ? [] : [svgElement('path', { ...stroke, d: begins + ends, strokeWidth: 3.4 })]),
    renderBeat(x, beatY, 6.6, sign.count, sign.strong),
    svgElement(
      'g',
      { transform: `translate(${x} ${moonY})` },
      renderMoonParts(sign.moon, { radius: moonRadius, rimWidth: 1.4, detail: 'seas', seasId }),
    ),
  ]);
}
