import type { Element, ElementContent } from 'hast';
import type { GroupPiece } from './break-lines.ts';
import { fitLabel, fitOrCutLabel } from './fit-label.ts';
import { renderMoonParts } from './moon.ts';
import { cell, findShortCue, type ScoreLayout, scorePage, textShare } from './score-layout.ts';
import { mm, renderBeat, renderLabel, renderNumberedText, scoreColours } from './score-marks.ts';
import type { ScoreContent } from './score-model.ts';
import { type PlacedNight, type RowFrame, renderMark, renderWeek } from './score-week.ts';
import { svgElement } from './svg-element.ts';

interface PlacedPiece {
  readonly piece: GroupPiece;
  readonly name: string;
  /** Left edge: the bar line. */
  readonly x: number;
  readonly nights: readonly PlacedNight[];
}

/**
 * Gives one row of the score, back to front: the week and the mark, the stave with its bars, the names, the nights.
 * @param index 0-based place of the row
 * @param seasId id of the path of the lunar seas
 */
export function renderRow(content: ScoreContent, layout: ScoreLayout, index: number, seasId: string): ElementContent[] {
  const pieces = placePieces(content, layout, layout.rows[index] ?? []);
  const nights = pieces.flatMap((piece) => piece.nights);
  const frame: RowFrame = { content, layout, heights: computeHeights(layout, index) };
  return [
    ...renderWeek(frame, nights),
    ...nights.flatMap((placed) => renderMark(frame, placed)),
    renderLines(frame, pieces, index === layout.rows.length - 1),
    ...pieces.map((piece) => renderGroupName(frame, piece)),
    ...nights.flatMap((placed) => renderNight(frame, placed, seasId)),
  ];
}

function placePieces(content: ScoreContent, layout: ScoreLayout, row: readonly GroupPiece[]): PlacedPiece[] {
  let column = 0;
  return row.map((piece) => {
    const first = column;
    column += piece.count;
    const group = content.groups[piece.group];
    const nights = (group?.nights.slice(piece.from, piece.from + piece.count) ?? []).map((night, index) => ({
      night,
      x: scorePage.left + (first + index + 0.5) * layout.pitch,
      count: piece.from + index + 1,
    }));
    return { piece, name: group?.name ?? '', x: scorePage.left + first * layout.pitch, nights };
  });
}

function computeHeights(layout: ScoreLayout, index: number): RowFrame['heights'] {
  const { scale } = layout;
  const top = scorePage.top + index * layout.rowHeight;
  const beat = top + (cell.groupLabel + cell.beat / 2) * scale;
  const moon = top + (cell.groupLabel + cell.beat) * scale + layout.moonRadius;
  const name = moon + layout.moonRadius + cell.belowMoon * scale;
  const date = name + layout.nameLines * cell.nameLine * scale;
  const cue = date + cell.dateLine * scale;
  return { top, beat, moon, name, date, cue, end: cue + layout.cueLines * cell.cueLine * scale };
}

/** The stave between the Moons, the bar lines, and the double bar at the very end. */
function renderLines({ layout, heights }: RowFrame, pieces: readonly PlacedPiece[], last: boolean): Element {
  const { scale, pitch } = layout;
  const reach = layout.moonRadius + 1.6 * scale;
  const nights = pieces.flatMap((piece) => piece.nights);
  const end = scorePage.left + nights.length * pitch;
  const y = mm(heights.moon);
  const stops = [scorePage.left, ...nights.flatMap(({ x }) => [x - reach, x + reach]), end];
  const stave = stops.map((x, index) => (index % 2 === 0 ? `M${mm(x)} ${y}` : `H${mm(x)}`)).join('');
  const bar = (x: number, from: number) => `M${mm(x)} ${mm(from)}V${mm(heights.moon + reach)}`;
  const beginnings = pieces.map(({ piece, x }) =>
    piece.from === 0 ? bar(x, heights.top + 1.2 * scale) : bar(x, heights.moon - reach),
  );
  const endBar = bar(end, heights.moon - reach);
  // Outside the last cell, where the frame of a week has room.
  const finalX = end + 1.8 * scale;
  return svgElement('g', { className: ['score-line'], fill: 'none', stroke: scoreColours.ink }, [
    svgElement('path', { d: stave, strokeWidth: 0.45 }),
    svgElement('path', { d: beginnings.join('') + endBar, strokeWidth: 0.6 }),
    ...(last ? [svgElement('path', { d: bar(finalX, heights.moon - reach), strokeWidth: mm(1.5 * scale) })] : []),
  ]);
}

function renderGroupName({ content, layout, heights }: RowFrame, placed: PlacedPiece): Element {
  const { scale } = layout;
  const width = placed.piece.count * layout.pitch - 5 * scale;
  const text = placed.piece.from === 0 ? placed.name : `… ${placed.name}`;
  const oneLine = fitLabel(text, width, 6.6 * scale, 1, true);
  const small = oneLine.fontSize >= 5 * scale ? undefined : fitOrCutLabel(text, width, 4.4 * scale, 2, true);
  const label = small ?? oneLine;
  const leading = label.fontSize * 1.05;
  const y = heights.top + 6.3 * scale - (label.lines.length - 1) * leading;
  return renderLabel(placed.x + 2.4 * scale, y, leading, label, {
    bold: true,
    anchor: 'start',
    language: content.namesLanguage,
    ...(small?.cut === true ? { whole: placed.name } : {}),
  });
}

function renderNight(frame: RowFrame, placed: PlacedNight, seasId: string): ElementContent[] {
  const { content, layout, heights } = frame;
  const { scale } = layout;
  const { night, x } = placed;
  const width = layout.pitch * textShare;
  const parts = renderMoonParts(night.view, { radius: layout.moonRadius, rimWidth: 0.5, detail: 'seas', seasId });
  const name = fitOrCutLabel(night.name, width, cell.nameFont * scale, layout.nameLines, true);
  return [
    renderBeat(x, heights.beat, 2.5 * scale, placed.count, night.strong),
    svgElement('g', { transform: `translate(${mm(x)} ${mm(heights.moon)})` }, parts),
    renderLabel(x, heights.name + 4.6 * scale, Math.min(cell.nameLine * scale, name.fontSize * 1.15), name, {
      bold: true,
      language: content.namesLanguage,
      ...(name.cut ? { whole: night.name } : {}),
    }),
    renderDate(frame, placed),
    ...renderCue(frame, placed),
  ];
}

/** "16 · Wed 29 Jul": the number is the one to count along, so it stands out a little. */
function renderDate({ layout, heights }: RowFrame, { night, x }: PlacedNight): Element {
  const y = heights.date + 3.6 * layout.scale;
  return renderNumberedText(x, y, layout.dateFont, String(night.nightOfMonth), ` · ${night.date}`);
}

function renderCue({ layout, heights }: RowFrame, placed: PlacedNight): Element[] {
  const cue = findShortCue(placed.night);
  if (cue === undefined || layout.cueLines === 0) return [];
  const { scale } = layout;
  const label = fitLabel(cue, layout.pitch * textShare, cell.cueFont * scale, layout.cueLines, false);
  return [renderLabel(placed.x, heights.cue + 3.2 * scale, cell.cueLine * scale, label, {})];
}
