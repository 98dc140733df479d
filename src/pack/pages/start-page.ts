import type { Element, ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { renderName } from '../../content/render-name.ts';
import { listWeekEclipses } from '../../directives/eclipse-notice.ts';
import { renderMoon } from '../../drawing/moon.ts';
import { renderPageShell } from '../page-shell.ts';
import { renderDaySheet, renderReliefNotes } from './day-sheet.ts';
import { renderEclipseSection } from './eclipse-section.ts';
import { renderKeeperNote } from './how-we-know.ts';
import markToday from './mark-today.js?raw';
import { renderPackNav } from './pack-nav.ts';
import { groupByDate, joinWithDots, listPlacedLessons, type PageContext, type PlacedLesson } from './page-context.ts';
import { pageStyles } from './page-styles.ts';

const STRIP_MOON_RADIUS_PX = 17;

/** The page a relief teacher opens first: the week at a glance, then each day on a sheet of its own. */
export function renderStartPage(context: PageContext): Root {
  const { week, paths } = context;
  const { labels, plan, school } = week;
  const days = groupByDate(listPlacedLessons(context));
  return renderPageShell(
    {
      language: labels.language,
      title: `${labels.text('start-here')}: ${plan.title}`,
      kind: 'start-page',
      styles: pageStyles.start,
      script: markToday,
      skipLabel: labels.text('skip-link'),
      header: [
        renderPackNav(context, paths.start),
        h('div', { className: ['week-head'] }, [
          h('p', { className: ['eyebrow'] }, labels.text('start-here')),
          h('h1', plan.title),
          h('p', { className: ['week-facts'] }, joinWithDots([school.name, plan.for, describeDates(context, days)])),
        ]),
      ],
      main: [
        renderStrip(context, days),
        ...renderEclipseSection('week', listWeekEclipses(week.almanac.place, plan.begins), week),
        ...days.map((day) => renderDaySheet(context, day)),
        ...renderReliefNotes(context),
      ],
      footer: [...renderKeeperNote(week), ...(school.note === undefined ? [] : [h('p', school.note)])],
    },
    context.digest,
  );
}

/** The first and the last date taught, or the one date. */
function describeDates({ week }: PageContext, days: readonly PlacedLesson[][]): ElementContent[] | string {
  const { labels } = week;
  const first = days[0]?.[0]?.lesson.tonight.date;
  const last = days.at(-1)?.[0]?.lesson.tonight.date;
  if (first === undefined || last === undefined) return '';
  if (first === last) return labels.date(first, 'long');
  return labels.text('date-range', { from: labels.date(first, 'day'), to: labels.date(last, 'long') });
}

function renderStrip(context: PageContext, days: readonly PlacedLesson[][]): Element {
  return h('nav', { className: ['strip'], ariaLabel: context.week.labels.text('days-of-week') }, [
    h(
      'ol',
      { className: ['plain-list'] },
      days.map((day) => renderTab(context, day)),
    ),
  ]);
}

/** A day of the strip: date, night, the Moon. The whole tab leads to the day's sheet. */
function renderTab({ week, view }: PageContext, day: readonly PlacedLesson[]): Element {
  const first = day[0];
  if (first === undefined) throw new Error('A day without a lesson has no tab.');
  const { tonight, head } = first.lesson;
  return h('li', [
    h('a', { className: ['day-tab'], href: `#${head.day}` }, [
      h('span', { className: ['tab-date'] }, [
        h('time', { dateTime: tonight.date }, week.labels.date(tonight.date, 'short')),
        h('span', { className: ['today-flag'], hidden: true }, ` ${week.labels.text('today')}`),
      ]),
      ' ',
      h('span', { className: ['tab-night'] }, [renderName(tonight.night.name, view.namesLanguage)]),
      renderMoon(week.almanac.moonBestSeen(tonight), { radius: STRIP_MOON_RADIUS_PX }),
    ]),
  ]);
}
