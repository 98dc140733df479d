import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { renderPageShell } from '../page-shell.ts';
import { renderKeeperNote } from './how-we-know.ts';
import { renderPackNav } from './pack-nav.ts';
import { joinWithDots, type PageContext } from './page-context.ts';
import { pageStyles } from './page-styles.ts';
import { renderScoreCodes } from './score-codes.ts';
import { renderScoreList } from './score-list.ts';
import { listScoreMonths, type ScoreMonth } from './score-months.ts';
import { renderScoreSheets } from './score-sheet.ts';

/**
 * The month of the week for the wall, two sheets for each month that the week lies in, and the same in words; then codes
 * to recordings, where there are any.
 */
export function renderScorePage(context: PageContext): Root {
  const { week, paths } = context;
  const { labels, plan } = week;
  const months = listScoreMonths(week);
  return renderPageShell(
    {
      labels,
      title: `${labels.text('month-for-wall')}: ${plan.title}`,
      kind: 'score-page',
      styles: pageStyles.score,
      skipLabel: labels.text('skip-link'),
      header: [
        renderPackNav(context, paths.score),
        h('div', { className: ['score-head'] }, [
          h('p', { className: ['eyebrow'] }, joinWithDots([plan.title, plan.for])),
          h('h1', labels.text('month-for-wall')),
          ...renderPaperChoice(context),
        ]),
      ],
      main: [
        ...months.map((month, index) => renderMonth(context, month, index + 1)),
        ...renderScoreCodes(context, months),
      ],
      footer: renderKeeperNote(week),
    },
    context.digest,
  );
}

/** What the page prints on: A3, and A4 when the box is ticked. The styles read the box, so it needs no script. */
function renderPaperChoice({ week: { labels } }: PageContext): Element[] {
  return [
    h('p', { className: ['eyebrow'] }, labels.text('print-on-a3')),
    h('p', { className: ['paper-choice', 'screen-only'] }, [
      h('label', [h('input', { type: 'checkbox', id: 'on-a4' }), ` ${labels.text('print-on-a4')}`]),
    ]),
  ];
}

function renderMonth(context: PageContext, month: ScoreMonth, number: number): Element {
  const id = `month-${number}`;
  const children: ElementContent[] = [...renderScoreSheets(context, month, id), renderScoreList(context, month, id)];
  return h('section', { className: ['score-month'], ariaLabelledBy: `${id}-title` }, children);
}
