import type { Element, ElementContent } from 'hast';
import { estimateWidthEms, fitLabel } from './fit-label.ts';
import { renderSeasOnce } from './moon.ts';
import { computeScoreLayout, scorePage } from './score-layout.ts';
import { renderBeat, renderText } from './score-marks.ts';
import type { ScoreContent, ScoreText } from './score-model.ts';
import { renderRow } from './score-row.ts';
import { svgElement } from './svg-element.ts';

/**
 * Gives the month as music: a line with its Moons, a bar line before each group, a numbered beat for each night, the
 * strong one filled. Sizes are millimetres of A3 landscape. Nothing is told by colour alone.
 * @throws RangeError when there is no night, or a Moon cannot be drawn
 */
export function renderScore(content: ScoreContent): Element {
  const layout = computeScoreLayout(content.groups.map((group) => group.nights));
  const seasId = `${content.idPrefix ?? 'score'}-seas`;
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
      svgElement('title', {}, [content.pictureTitle]),
      svgElement('defs', {}, [renderSeasOnce(seasId)]),
      ...renderHeading(content),
      ...layout.rows.flatMap((_row, index) => renderRow(content, layout, index, seasId)),
    ],
  );
}

function renderHeading(content: ScoreContent): ElementContent[] {
  const { left, right } = scorePage;
  const { strong, beat } = content.legend;
  const legendSize = fitLabel(widerOf(strong, beat), 90, 5, 1, false).fontSize;
  const legendX = right - legendSize * Math.max(estimateWidthEms(strong, false), estimateWidthEms(beat, false));
  const title = fitLabel(content.title, legendX - left - 16, 19, 1, true);
  const line = (x: number, y: number, largest: number, runs: readonly ScoreText[]) => {
    const { fontSize } = fitLabel(runs.map(textOf).join(''), right - x, largest, 1, false);
    return renderText(x, y, fontSize, runs, content.namesLanguage, { tone: 'soft', anchor: 'start' });
  };
  return [
    renderText(left, 29, title.fontSize, [{ name: content.title }], content.namesLanguage, {
      bold: true,
      anchor: 'start',
    }),
    line(left, 40.5, 7, content.subtitle),
    renderBeat(legendX - 6, 19.2, 2.6, 1, true),
    line(legendX, 21, legendSize, [strong]),
    renderBeat(legendX - 6, 27.2, 2.6, 2, false),
    line(legendX, 29, legendSize, [beat]),
    line(left, 288, 4.6, content.footer),
  ];
}

function widerOf(one: string, other: string): string {
  return estimateWidthEms(one, false) > estimateWidthEms(other, false) ? one : other;
}

function textOf(text: ScoreText): string {
  return typeof text === 'string' ? text : text.name;
}
