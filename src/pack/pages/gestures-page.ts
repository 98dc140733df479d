import type { Element, Root } from 'hast';
import { h } from 'hastscript';
import { renderName } from '../../content/render-name.ts';
import { tagAuthors } from '../../content/tag-authors.ts';
import { renderFigureStore } from '../../directives/gestures/shared-figures.ts';
import { renderPageShell } from '../page-shell.ts';
import { legendFigures, renderGestureLegend } from './gesture-legend.ts';
import { listSheetGroups, renderSheetGroup, type SheetNight } from './gesture-sheet.ts';
import { renderKeeperNote } from './how-we-know.ts';
import { renderPackNav } from './pack-nav.ts';
import { joinWithDots, type PageContext } from './page-context.ts';
import { pageStyles } from './page-styles.ts';

/**
 * How each gesture is done, for who has never seen them: every night of the calendar, by groups, drawn from all sides
 * and in words. Where no night has a gesture the page says so. For teachers: it names every night.
 */
export function renderGesturesPage(context: PageContext): Root {
  const { week, paths, view } = context;
  const { labels, calendar, plan } = week;
  const title = labels.text('how-gestures-go');
  const groups = listSheetGroups(week);
  const nights = groups.flat();
  const hasGestures = nights.some(({ figures }) => figures.length > 0);
  return renderPageShell(
    {
      labels,
      title: `${title}: ${plan.title}`,
      kind: 'gestures-page',
      styles: pageStyles.gestures,
      playsSound: nights.some(({ spoken }) => spoken?.sound !== undefined),
      skipLabel: labels.text('skip-link'),
      runningLine: `${title} · ${calendar.title}`,
      header: [
        renderPackNav(context, paths.gestures),
        h('div', { className: ['how-head'] }, [
          h(
            'p',
            { className: ['eyebrow'] },
            joinWithDots([[renderName(calendar.title, view.namesLanguage)], plan.for]),
          ),
          h('h1', title),
          ...renderIntroduction(context, hasGestures),
        ]),
      ],
      main: hasGestures
        ? [
            renderGestureLegend(labels),
            ...groups.flatMap((group) => renderSheetGroup(context, group)),
            ...renderCredits(context, nights),
            ...renderFigureStore([...legendFigures, ...nights.flatMap(({ figures }) => figures)]),
          ]
        : [h('p', labels.text('no-gestures-at-all'))],
      footer: renderKeeperNote(week),
    },
    context.digest,
  );
}

/** What the author says of the gestures, and what goes for all of them. */
function renderIntroduction({ week }: PageContext, hasGestures: boolean): Element[] {
  const { labels, gestures, school } = week;
  if (!hasGestures) return [];
  return [
    ...(gestures.note === undefined ? [] : [h('p', tagAuthors(labels.language, school.language), gestures.note)]),
    h('p', `${labels.text('seated-as-good')} ${labels.text('lead-as-mirror')}`),
  ];
}

/** Who is heard and who made the pictures, on what terms; each line once. */
function renderCredits({ week: { labels } }: PageContext, nights: readonly SheetNight[]): Element[] {
  const lines = nights.flatMap(({ figures, spoken }) => {
    const credit = figures[0]?.gesture.picture?.credit;
    return [
      ...(spoken === undefined
        ? []
        : [labels.text('names-spoken-by', { credit: spoken.credit, permission: spoken.permission })]),
      ...(credit === undefined ? [] : [labels.text('pictures-by', { credit })]),
    ];
  });
  return [...new Set(lines)].map((line) => h('p', { className: ['how-credit'] }, line));
}
