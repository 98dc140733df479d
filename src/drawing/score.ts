import type { Element, ElementContent } from 'hast';
import { estimateWidthEms, fitLabel } from './fit-label.ts';
import { renderSeasOnce } from './moon.ts';
import { renderFigures } from './score-figures.ts';
import { computeScoreLayout, row, type ScoreLayout, scorePage } from './score-layout.ts';
import { renderBeat, renderText } from './score-marks.ts';
import type { ScoreContent, ScoreSheet, ScoreText } from './score-model.ts';
import { type PlacedRow, placeRows, renderRow } from './score-row.ts';
import { svgElement } from './svg-element.ts';

/** Baselines of the title and the words beside it, and of what stands above those. */
const titleY = 24.5;
const captionY = 15.5;

/** Baseline of the last line on the page. */
const footY = 288.5;

/** Size of the words there. */
const footFont = 3.9;

/** Millimetres in which what the beats mean can be read at a glance. */
const leastCorner = 84;

/**
 * Gives the month as music, a picture a sheet: a line with its Moons, a bar line before each group, a numbered beat for
 * each night, the strong one filled, under the Moon the gesture and the name. Sizes are millimetres of A3 landscape.
 * Nothing is told by colour alone. What all sheets share is drawn in the first and used again in the others, so they
 * must stand on one page.
 * @throws RangeError when there is no night, or a Moon cannot be drawn
 */
export function renderScore(content: ScoreContent): Element[] {
  const layout = computeScoreLayout(content.groups.map((group) => group.nights));
  const rows = placeRows(content, layout);
  const [seasId, sharedId] = [`${content.idPrefix}-seas`, `${content.idPrefix}-shared`];
  const shared = svgElement('g', { id: sharedId }, [
    ...renderHeading(content, layout),
    ...rows.flatMap((_row, index) => renderRow(rows, index, seasId)),
  ]);
  return content.sheets.map((sheet, index) =>
    renderSheet(
      content,
      sheet,
      rows,
      index === 0
        ? [svgElement('defs', {}, [renderSeasOnce(seasId)]), shared]
        : [svgElement('use', { href: `#${sharedId}` })],
    ),
  );
}

function renderSheet(
  content: ScoreContent,
  { view, caption, pictureTitle }: ScoreSheet,
  rows: readonly PlacedRow[],
  shared: readonly ElementContent[],
): Element {
  const { right } = scorePage;
  const { fontSize } = fitLabel(caption, right - findTitleEnd(content), 6.6, 1, true);
  return svgElement(
    'svg',
    {
      xmlns: 'http://www.w3.org/2000/svg',
      viewBox: `0 0 ${scorePage.width} ${scorePage.height}`,
      className: ['score'],
      role: 'img',
      fontFamily: 'Andika, system-ui, sans-serif',
    },
    [
      svgElement('title', {}, [pictureTitle]),
      ...shared,
      renderText(right, captionY, fontSize, [caption], content.namesLanguage, { bold: true, anchor: 'end' }),
      svgElement(
        'g',
        { className: ['score-figures'] },
        rows.flatMap((placed) => renderFigures(placed, view)),
      ),
    ],
  );
}

function fitTitle({ title }: ScoreContent): number {
  return fitLabel(title, (scorePage.right - scorePage.left) / 2, 20, 1, true).fontSize;
}

/** Where the words beside the title may begin. */
function findTitleEnd(content: ScoreContent): number {
  return scorePage.left + fitTitle(content) * estimateWidthEms(content.title, true) + 8;
}

function renderHeading(content: ScoreContent, layout: ScoreLayout): ElementContent[] {
  const { left, right } = scorePage;
  const title: readonly ScoreText[] = [{ name: content.title }];
  const look = { bold: true, anchor: 'start' } as const;
  const subtitle = fitLabel(joinTexts(content.subtitle), right - findTitleEnd(content), 5, 1, false).fontSize;
  return [
    renderText(left, titleY, fitTitle(content), title, content.namesLanguage, look),
    renderText(right, titleY, subtitle, content.subtitle, content.namesLanguage, { tone: 'soft', anchor: 'end' }),
    ...renderFoot(content, layout),
  ];
}

/** The footer below the music, and what the beats mean: beside it, or in the corner that a short last row leaves. */
function renderFoot(content: ScoreContent, layout: ScoreLayout): ElementContent[] {
  const { left, right } = scorePage;
  const { strong, beat } = content.legend;
  const foot = (x: number, size: number, anchor: 'start' | 'end') =>
    renderText(x, footY, size, content.footer, content.namesLanguage, { tone: 'soft', anchor });
  const footEms = estimateWidthEms(joinTexts(content.footer), false);
  const [strongEms, beatEms] = [estimateWidthEms(strong, false), estimateWidthEms(beat, false)];
  const corner = findCorner(layout);
  if (corner === undefined) {
    const size = Math.min(footFont, (right - left) / (footEms + strongEms + beatEms + 2 * besideBeat + 4));
    const beatX = left + (besideBeat + strongEms + 1.5) * size;
    return [
      ...renderMeaning(content, strong, 1, left, footY, size),
      ...renderMeaning(content, beat, 2, beatX, footY, size),
      foot(right, size, 'end'),
    ];
  }
  const size = Math.min(5.6, corner.width / (Math.max(strongEms, beatEms) + besideBeat));
  return [
    ...renderMeaning(content, strong, 1, corner.x, corner.y - 0.7 * size, size),
    ...renderMeaning(content, beat, 2, corner.x, corner.y + 1.3 * size, size),
    foot(left, Math.min(footFont, (right - left) / footEms), 'start'),
  ];
}

/** Room in ems for a beat before what it means. */
const besideBeat = 1.8;

/** A beat and what it means; x is its left edge, y the baseline. */
function renderMeaning(content: ScoreContent, words: string, count: number, x: number, y: number, size: number) {
  return [
    renderBeat(x + 0.6 * size, y - 0.36 * size, 0.55 * size, count, count === 1),
    renderText(x + besideBeat * size, y, size, [words], content.namesLanguage, { tone: 'soft', anchor: 'start' }),
  ];
}

/** The free end of the last row, at its stave; undefined where it is too small for words. */
function findCorner({ rows, pitch, top, rowHeight, scale, moonRadius }: ScoreLayout) {
  const nights = (rows.at(-1) ?? []).reduce((sum, { count }) => sum + count, 0);
  const x = scorePage.left + nights * pitch + 10;
  const width = scorePage.right - x;
  if (width < leastCorner) return undefined;
  const lastTop = top + (rows.length - 1) * rowHeight;
  return { x, width, y: lastTop + (row.groupLabel + row.beat + row.aroundMoon) * scale + moonRadius };
}

function joinTexts(texts: readonly ScoreText[]): string {
  return texts.map((text) => (typeof text === 'string' ? text : text.name)).join('');
}
