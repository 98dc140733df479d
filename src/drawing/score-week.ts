import type { ElementContent } from 'hast';
import { fitLabel } from './fit-label.ts';
import type { ScoreLayout } from './score-layout.ts';
import { mm, renderLabel, scoreColours } from './score-marks.ts';
import type { ScoreContent, ScoreNight } from './score-model.ts';
import { svgElement } from './svg-element.ts';

/** A night in its place on a row. */
export interface PlacedNight {
  readonly night: ScoreNight;
  /** Middle of the cell. */
  readonly x: number;
  /** 1-based place within the group. */
  readonly count: number;
}

/** Shares of a cell's width between its bar line and the frames: outside the texts, and the one within the other. */
const weekInset = 0.04;
const markInset = 0.048;

/** Millimetres at scale 1 from the middle of the beats to the top of a frame: it keeps clear of their rings. */
const aboveBeat = 3.9;

/** What everything on a row is drawn from. */
export interface RowFrame {
  readonly content: ScoreContent;
  readonly layout: ScoreLayout;
  /** Millimetres from the top of the page: the row's top, the middle of beats and Moons, the tops of the texts, and their end. */
  readonly heights: Readonly<Record<'top' | 'beat' | 'moon' | 'name' | 'date' | 'cue' | 'end', number>>;
}

/** Gives, for each stretch of the week on this row, a wash behind its nights, a bracket below and the label. */
export function renderWeek({ content, layout, heights }: RowFrame, nights: readonly PlacedNight[]): ElementContent[] {
  const { scale, pitch } = layout;
  return findStretches(nights).flatMap(([first, last]) => {
    const left = first.x - pitch * (0.5 - weekInset);
    const width = last.x - first.x + pitch * (1 - 2 * weekInset);
    const y = heights.end + 2 * scale;
    const top = heights.beat - aboveBeat * scale;
    const label = fitLabel(content.weekLabel, width, 4.4 * scale, 1, true);
    const box = { x: mm(left), y: mm(top), width: mm(width), height: mm(y - top), fill: scoreColours.wash };
    const bracket = `M${mm(left)} ${mm(y - 2.4 * scale)}V${mm(y)}H${mm(left + width)}V${mm(y - 2.4 * scale)}`;
    return [
      svgElement('rect', { className: ['score-week'], ...box }),
      svgElement('path', {
        className: ['score-bracket'],
        d: bracket,
        fill: 'none',
        stroke: scoreColours.accent,
        strokeWidth: 0.8,
      }),
      renderLabel(left + width / 2, y + 4.8 * scale, 0, label, { tone: 'accent', bold: true }),
    ];
  });
}

function findStretches(nights: readonly PlacedNight[]): [PlacedNight, PlacedNight][] {
  const stretches: [PlacedNight, PlacedNight][] = [];
  let open = false;
  for (const placed of nights) {
    const stretch = stretches.at(-1);
    if (!placed.night.inWeek) open = false;
    else if (open && stretch !== undefined) stretch[1] = placed;
    else {
      stretches.push([placed, placed]);
      open = true;
    }
  }
  return stretches;
}

/** Gives the frame round a marked night, its word in the upper corner. */
export function renderMark({ layout, heights }: RowFrame, { night, x }: PlacedNight): ElementContent[] {
  if (night.mark === undefined) return [];
  const { scale, pitch } = layout;
  const top = heights.beat - aboveBeat * scale;
  const y = heights.end + 1.4 * scale;
  const left = x - pitch * (0.5 - markInset);
  const box = { x: mm(left), y: mm(top), width: mm(pitch * (1 - 2 * markInset)), height: mm(y - top), rx: 3 };
  const label = fitLabel(night.mark, pitch / 2 - 8 * scale, 4 * scale, 1, true);
  return [
    svgElement('rect', { className: ['score-mark'], ...box, fill: 'none', stroke: scoreColours.ink, strokeWidth: 0.7 }),
    renderLabel(x + pitch / 2 - 4, top + 4.6 * scale, 0, label, { bold: true, anchor: 'end' }),
  ];
}
