import type { Element, ElementContent } from 'hast';
import type { GroupPiece } from './break-lines.ts';
import { fitLabel, fitOrCutLabel } from './fit-label.ts';
import { renderMoonParts } from './moon.ts';
import { nameLeading, row, type ScoreLayout, scorePage, textShare } from './score-layout.ts';
import { mm, renderBeat, renderLabel, renderNumberedText, scoreColours } from './score-marks.ts';
import type { ScoreContent } from './score-model.ts';
import { type PlacedNight, type RowFrame, renderWeek } from './score-week.ts';
import { svgElement } from './svg-element.ts';

interface PlacedPiece {
  readonly piece: GroupPiece;
  readonly name: string;
  /** Left edge: the bar line. */
  readonly x: number;
  readonly nights: readonly PlacedNight[];
}

/** A row with everything in its place. */
export interface PlacedRow {
  readonly frame: RowFrame;
  readonly pieces: readonly PlacedPiece[];
  readonly nights: readonly PlacedNight[];
  readonly last: boolean;
}

/** Puts every night of the score in its place, row by row. */
export function placeRows(content: ScoreContent, layout: ScoreLayout): PlacedRow[] {
  return layout.rows.map((pieces, index) => {
    const placed = placePieces(content, layout, pieces);
    return {
      frame: { content, layout, heights: computeHeights(layout, index) },
      pieces: placed,
      nights: placed.flatMap((piece) => piece.nights),
      last: index === layout.rows.length - 1,
    };
  });
}

function placePieces(content: ScoreContent, layout: ScoreLayout, pieces: readonly GroupPiece[]): PlacedPiece[] {
  let column = 0;
  return pieces.map((piece) => {
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
  const { scale, moonRadius, nameFont } = layout;
  const top = layout.top + index * layout.rowHeight;
  const beat = top + (row.groupLabel + row.beat / 2) * scale;
  const moon = top + (row.groupLabel + row.beat + row.aroundMoon) * scale + moonRadius;
  const figure = moon + moonRadius + row.aroundMoon * scale;
  const name = figure + layout.figureHeight;
  const date = name + layout.nameLines * nameLeading * nameFont;
  return { top, beat, moon, figure, name, date, end: date + row.date * scale };
}

/**
 * Gives what a row is on every sheet, back to front: the week, the stave with its bars, the names, the Moons.
 * @param seasId id of the path of the lunar seas
 */
export function renderRow(rows: readonly PlacedRow[], index: number, seasId: string): ElementContent[] {
  const placed = rows[index];
  if (placed === undefined) throw new RangeError(`there is no row ${index}`);
  const { frame, pieces, nights, last } = placed;
  const before = rows[index - 1]?.nights.at(-1)?.night.inWeek === true;
  const after = rows[index + 1]?.nights[0]?.night.inWeek === true;
  return [
    ...renderWeek(frame, nights, { before, after }),
    renderLines(frame, pieces, last),
    ...pieces.map((piece) => renderGroupName(frame, piece)),
    ...nights.flatMap((night) => renderNight(frame, night, seasId)),
  ];
}

/** The stave between the Moons, the bar lines, and the double bar at the very end. */
function renderLines({ layout, heights }: RowFrame, pieces: readonly PlacedPiece[], last: boolean): Element {
  const { scale, pitch } = layout;
  const reach = layout.moonRadius + 1.4 * scale;
  const nights = pieces.flatMap((piece) => piece.nights);
  const end = scorePage.left + nights.length * pitch;
  const y = mm(heights.moon);
  const stops = [scorePage.left, ...nights.flatMap(({ x }) => [x - reach, x + reach]), end];
  const stave = stops.map((x, index) => (index % 2 === 0 ? `M${mm(x)} ${y}` : `H${mm(x)}`)).join('');
  const bar = (x: number, from: number) => `M${mm(x)} ${mm(from)}V${mm(heights.moon + reach)}`;
  const beginnings = pieces.map(({ piece, x }) =>
    piece.from === 0 ? bar(x, heights.top + 0.4 * scale) : bar(x, heights.moon - reach),
  );
  const endBar = bar(end, heights.moon - reach);
  // Outside the last cell, where the frame of a week has room.
  const finalX = end + 1.8 * scale;
  return svgElement('g', { className: ['score-line'], fill: 'none', stroke: scoreColours.ink }, [
    svgElement('path', { d: stave, strokeWidth: 0.5 }),
    svgElement('path', { d: beginnings.join('') + endBar, strokeWidth: 0.8 }),
    ...(last ? [svgElement('path', { d: bar(finalX, heights.moon - reach), strokeWidth: mm(1.5 * scale) })] : []),
  ]);
}

function renderGroupName({ content, layout, heights }: RowFrame, placed: PlacedPiece): Element {
  const { scale } = layout;
  const width = placed.piece.count * layout.pitch - 5 * scale;
  const text = placed.piece.from === 0 ? placed.name : `… ${placed.name}`;
  const oneLine = fitLabel(text, width, row.groupFont * scale, 1, true);
  const enough = oneLine.fontSize >= 0.72 * row.groupFont * scale;
  const small = enough ? undefined : fitOrCutLabel(text, width, 3.9 * scale, 2, true);
  const label = small ?? oneLine;
  const leading = label.fontSize;
  const y = heights.top + 5.9 * scale - (label.lines.length - 1) * leading;
  return renderLabel(placed.x + 2.2 * scale, y, leading, label, {
    bold: true,
    anchor: 'start',
    language: content.namesLanguage,
    ...(small?.cut === true ? { whole: placed.name } : {}),
  });
}

function renderNight(frame: RowFrame, placed: PlacedNight, seasId: string): ElementContent[] {
  const { layout, heights } = frame;
  const { scale, moonRadius } = layout;
  const { night, x } = placed;
  const rimWidth = Math.max(0.35, 0.07 * moonRadius);
  const moon = renderMoonParts(night.moon, { radius: moonRadius, rimWidth, detail: 'seas', seasId });
  return [
    renderBeat(x, heights.beat, row.beatRadius * scale, placed.count, night.strong),
    svgElement('g', { transform: `translate(${mm(x)} ${mm(heights.moon)})` }, moon),
    renderName(frame, placed),
    // "16 · Wed 29 Jul": the number is the one to count along, so it stands out a little.
    renderNumberedText(x, heights.date + 3.8 * scale, layout.dateFont, String(night.nightOfMonth), ` · ${night.date}`),
  ];
}

/** One line stands in the middle of the height of two. */
function renderName({ content, layout, heights }: RowFrame, { night, x }: PlacedNight): Element {
  const { nameFont, nameLines, pitch } = layout;
  const name = fitOrCutLabel(night.name, pitch * textShare, nameFont, nameLines, true);
  const leading = nameLeading * Math.min(nameFont, name.fontSize * 1.1);
  const free = nameLines * nameLeading * nameFont - name.fontSize - (name.lines.length - 1) * leading;
  const baseline = heights.name + free / 2 + 0.79 * name.fontSize;
  return renderLabel(x, baseline, leading, name, {
    bold: true,
    language: content.namesLanguage,
    ...(name.cut ? { whole: night.name } : {}),
  });
}
