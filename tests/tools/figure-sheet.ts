import type { Element } from 'hast';
import type { Gesture, GestureSet } from '../../src/content/types.ts';
import { type FigureView, renderFigure } from '../../src/drawing/figure/figure.ts';
import figureStyles from '../../src/pack/styles/figure.css?raw';
import tokens from '../../src/pack/styles/tokens.css?raw';
import { toHtml } from '../drawing/find-elements.ts';

const VIEWS: readonly FigureView[] = ['facing', 'own', 'mirror'];
/** The size at which a figure must read on paper, the size of a card, and one to look at closely. */
const HEIGHTS_CM = [3, 5, 12] as const;

const STYLES = `
${tokens}
${figureStyles}
body { margin: 1cm; background: var(--paper); color: var(--ink); font: 10pt var(--font); }
ol { display: flex; flex-wrap: wrap; gap: 0.5cm; margin: 0 0 1cm; padding: 0; list-style: none; }
li { break-inside: avoid; text-align: center; }
.figure { width: auto; }
${HEIGHTS_CM.map((height) => `.high-${height} .figure { height: ${height}cm; }`).join('\n')}`;

const toText = (text: string): string => toHtml({ type: 'text', value: text });

const draw = (figures: readonly Element[], name: string): string => `<li>${toHtml(...figures)}<br>${toText(name)}</li>`;

/**
 * Gives a page with every gesture of a set, to look at on the screen, in the dark scheme, and on paper: in its three views
 * (facing, own, mirror, side by side) at three heights, and seated.
 */
export function writeFigureSheet(set: GestureSet): string {
  const entries = Object.entries(set.gestures);
  const list = (title: string, height: number, drawAll: (gesture: Gesture) => Element[]) =>
    `<h2>${title}</h2><ol class="high-${height}">${entries
      .map(([name, gesture]) => draw(drawAll(gesture), name))
      .join('\n')}</ol>`;
  const standing = HEIGHTS_CM.map((height) =>
    list(`${height} cm`, height, (gesture) => VIEWS.map((view) => renderFigure(gesture, view))),
  );
  const seated = list('Seated', 5, (gesture) => [renderFigure(gesture, 'facing', { seated: true })]);
  const title = toText(set.title);
  const head = `<meta charset="utf-8"><title>${title}</title><style>${STYLES}</style>`;
  return `<!doctype html>\n<html lang="en">${head}\n<h1>${title}</h1>\n${standing.join('\n')}\n${seated}\n</html>\n`;
}
