import type { ElementContent, Root } from 'hast';
import { h } from 'hastscript';
import { listWeekEclipses } from '../../directives/eclipse-notice.ts';
import { renderPageShell } from '../page-shell.ts';
import { renderCalendarLink } from './calendar-link.ts';
import { renderDaySheet } from './day-sheet.ts';
import { renderEclipseSection } from './eclipse-section.ts';
import { renderKeeperNote } from './how-we-know.ts';
import { describeLearningResource } from './learning-resource.ts';
import markToday from './mark-today.js?raw';
import { renderPackNav } from './pack-nav.ts';
import { groupByDate, joinWithDots, listPlacedLessons, type PageContext, type PlacedLesson } from './page-context.ts';
import { pageStyles } from './page-styles.ts';
import { renderWeekNotes } from './relief-notes.ts';
import { renderTodayNotice } from './today-notice.ts';
import { renderWeekStrip } from './week-strip.ts';
import { renderWeekTable } from './week-table.ts';

/** The page a relief teacher opens first: the days, each on a sheet of its own, then the week at a glance. */
export function renderStartPage(context: PageContext): Root {
  const { week, paths } = context;
  const { labels, plan, school } = week;
  const days = groupByDate(listPlacedLessons(context));
  const madeFor = describeDates(context, days);
  return renderPageShell(
    {
      labels,
      title: `${labels.text('start-here')}: ${plan.title}`,
      kind: 'start-page',
      styles: pageStyles.start,
      script: markToday,
      data: describeLearningResource(context),
      skipLabel: labels.text('skip-link'),
      runningLine: plan.title,
      header: [
        renderPackNav(context, paths.start),
        h('div', { className: ['week-head'] }, [
          h('p', { className: ['eyebrow'] }, labels.text('start-here')),
          h('h1', plan.title),
          h('p', { className: ['week-facts'] }, joinWithDots([school.name, plan.for, madeFor])),
        ]),
      ],
      main: [
        ...renderTodayNotice(context, days),
        renderWeekStrip(context, days),
        ...renderEclipseSection('week', listWeekEclipses(week.almanac.place, plan.begins), week),
        ...days.map((day) => renderDaySheet(context, { days, madeFor }, day)),
        ...renderWeek(context, days),
        ...renderWeekNotes(context),
        renderCalendarLink(context),
      ],
      footer: [...renderKeeperNote(week), ...(school.note === undefined ? [] : [h('p', school.note)])],
    },
    context.digest,
  );
}

function renderWeek(context: PageContext, days: readonly PlacedLesson[][]): ElementContent[] {
  return days.length === 0 ? [] : [renderWeekTable(context, days)];
}

/** For which dates the pack was made: the first and the last that are taught, or the one. */
function describeDates({ week }: PageContext, days: readonly PlacedLesson[][]): string {
  const { labels } = week;
  const first = days[0]?.[0]?.lesson.tonight.date;
  const last = days.at(-1)?.[0]?.lesson.tonight.date;
  if (first === undefined || last === undefined) return '';
  if (first === last) return labels.text('made-for-day', { date: labels.date(first, 'long') });
  return labels.text('made-for-range', { from: labels.date(first, 'day'), to: labels.date(last, 'long') });
}
