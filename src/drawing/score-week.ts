import type { ElementContent } from 'hast';
import { estimateWidthEms, fitLabel } from './fit-label.ts';
import { row, type ScoreLayout } from './score-layout.ts';
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

/** What everything on a row is drawn from. */
export interface RowFrame {
  readonly content: ScoreContent;
  readonly layout: ScoreLayout;
  /** Millimetres from the top of the page: the row's top, the middle of beats and Moons, the tops of figure and texts, and their end. */
  readonly heights: Readonly<Record<'top' | 'beat' | 'moon' | 'figure' | 'name' | 'date' | 'end', number>>;
}

/** Nights of the week side by side on a row. */
interface Stretch {
  readonly first: PlacedNight;
  readonly last: PlacedNight;
  /** True when the week goes on from the row before, or on the next one: the frame is open on that side. */
  readonly openLeft: boolean;
  readonly openRight: boolean;
}

/** Share of a cell's width between its edge and the frame. */
const inset = 0.033;

/**
 * Gives, for each stretch of the week on this row, a wash behind its nights, a bracket round them and the label, which
 * stands in a gap of the bracket's lower line.
 * @param before, after whether the nights beside the row are in the week
 */
export function renderWeek(
  frame: RowFrame,
  nights: readonly PlacedNight[],
  { before, after }: { readonly before: boolean; readonly after: boolean },
): ElementContent[] {
  return findStretches(nights, before, after).flatMap((stretch) => renderStretch(frame, stretch));
}

function renderStretch({ content, layout, heights }: RowFrame, stretch: Stretch): ElementContent[] {
  const { scale, pitch } = layout;
  const left = stretch.first.x - pitch * (0.5 - (stretch.openLeft ? 0 : inset));
  const right = stretch.last.x + pitch * (0.5 - (stretch.openRight ? 0 : inset));
  const top = heights.beat - (row.beatRadius + 0.75) * scale;
  const bottom = heights.end + 2.6 * scale;
  const middle = (left + right) / 2;
  const label = fitLabel(content.weekLabel, (right - left) * 0.8, row.weekFont * scale, 1, true);
  const gap = (label.fontSize * estimateWidthEms(content.weekLabel, true)) / 2 + 1.2 * scale;
  const box = { x: mm(left), y: mm(top), width: mm(right - left), height: mm(bottom - top) };
  return [
    svgElement('rect', { className: ['score-week'], ...box, rx: mm(1.6 * scale), fill: scoreColours.wash }),
    svgElement('path', {
      className: ['score-bracket'],
      d: bracketPath({ left, right, top, bottom, corner: 1.6 * scale, gap: [middle - gap, middle + gap] }, stretch),
      fill: 'none',
      stroke: scoreColours.accent,
      strokeWidth: mm(Math.max(0.4, 0.75 * scale)),
    }),
    renderLabel(middle, bottom + 0.36 * label.fontSize, 0, label, { tone: 'accent', bold: true }),
  ];
}

interface Bracket {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
  /** Radius of the corners. */
  readonly corner: number;
  /** Where the lower line leaves room for the label. */
  readonly gap: readonly [number, number];
}

/** A frame with round corners, open where the week goes on, drawn clockwise from the end of the gap. */
function bracketPath(bracket: Bracket, { openLeft, openRight }: Stretch): string {
  const { left, right, top, bottom, gap } = bracket;
  const corner = mm(bracket.corner);
  const arc = (x: 1 | -1, y: 1 | -1) => `a${corner} ${corner} 0 0 0 ${x * corner} ${y * corner}`;
  const [l, r, t, b] = [mm(left), mm(right), mm(top), mm(bottom)];
  const inside = { l: mm(left + bracket.corner), r: mm(right - bracket.corner) };
  const rightEnd = openRight
    ? `H${r}M${r} ${t}`
    : `H${inside.r}${arc(1, -1)}V${mm(top + bracket.corner)}${arc(-1, -1)}`;
  const leftEnd = openLeft ? `H${l}M${l} ${b}` : `H${inside.l}${arc(-1, 1)}V${mm(bottom - bracket.corner)}${arc(1, 1)}`;
  return `M${mm(gap[1])} ${b}${rightEnd}${leftEnd}H${mm(gap[0])}`;
}

function findStretches(nights: readonly PlacedNight[], before: boolean, after: boolean): Stretch[] {
  const stretches: Stretch[] = [];
  nights.forEach((placed, index) => {
    if (!placed.night.inWeek) return;
    const goesOn = nights[index + 1]?.night.inWeek ?? after;
    const openRight = index === nights.length - 1 && goesOn;
    const open = stretches.at(-1);
    const wasOpen = nights[index - 1]?.night.inWeek === true;
    if (wasOpen && open !== undefined) stretches[stretches.length - 1] = { ...open, last: placed, openRight };
    else stretches.push({ first: placed, last: placed, openLeft: index === 0 && before, openRight });
  });
  return stretches;
}
