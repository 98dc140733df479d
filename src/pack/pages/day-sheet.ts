import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { renderName } from '../../content/render-name.ts';
import { computeNightCard } from '../../directives/night-card.ts';
import { renderKeeperLine } from './how-we-know.ts';
import { renderLessonBlock } from './lesson-block.ts';
import { renderNightSummary } from './night-summary.ts';
import { joinWithDots, type PageContext, type PlacedLesson } from './page-context.ts';

/** What a day's sheet says of its week. */
export interface WeekFrame {
  readonly days: readonly PlacedLesson[][];
  /** For which dates the pack was made, in words. */
  readonly madeFor: string;
}

/**
 * One day of the start page: the night and what to say of it, and for each lesson what to do, in order, and all it needs.
 * Prints on a sheet of its own, with the other days of the week in a line.
 */
export function renderDaySheet(
  context: PageContext,
  { days, madeFor }: WeekFrame,
  day: readonly PlacedLesson[],
): Element {
  const first = day[0];
  if (first === undefined) throw new Error('A day without a lesson has no sheet.');
  const { week } = context;
  const { labels, plan, school } = week;
  const { head, tonight } = first.lesson;
  const classBegins = head.begins ?? school.classBegins;
  const card = computeNightCard(week.almanac, week.calendar, tonight.date, classBegins);
  const weekday = labels.weekday(head.day);
  return h('section', { className: ['day-sheet'], id: head.day, ariaLabelledBy: `${head.day}-title` }, [
    h('p', { className: ['sheet-line', 'print-only'] }, joinWithDots([plan.title, school.name, plan.for, madeFor])),
    h('h2', { id: `${head.day}-title` }, [
      h('span', { className: ['today-flag'], hidden: true }, `${labels.text('today')}: `),
      h('time', { dateTime: tonight.date }, renderDate(labels.date(tonight.date, 'day'), weekday)),
    ]),
    renderNightSummary(context, card, classBegins),
    ...day.map((placed, index) =>
      renderLessonBlock(
        context,
        placed,
        day.slice(0, index).map(({ lesson }) => lesson),
      ),
    ),
    renderWeekLine(context, days, day),
    h('p', { className: ['keeper-line', 'print-only'] }, renderKeeperLine(week)),
  ]);
}

/** A date whose day of the week stands out, wherever in it the language puts that. */
function renderDate(date: string, weekday: string): ElementContent[] {
  const at = date.indexOf(weekday);
  if (at < 0) return [{ type: 'text', value: date }];
  const rest = (text: string): ElementContent[] => (text === '' ? [] : [h('span', { className: ['date-rest'] }, text)]);
  return [
    ...rest(date.slice(0, at)),
    h('span', { className: ['date-day'] }, weekday),
    ...rest(date.slice(at + weekday.length)),
  ];
}

/** The days and nights of the week in a line: on paper, the way to the other days. */
function renderWeekLine(
  { week, view }: PageContext,
  days: readonly PlacedLesson[][],
  own: readonly PlacedLesson[],
): Element {
  const items = days.flatMap((day) => {
    const tonight = day[0]?.lesson.tonight;
    if (tonight === undefined) return [];
    const words = [
      h('span', week.labels.date(tonight.date, 'short')),
      renderName(tonight.night.name, view.namesLanguage),
    ];
    return [h('li', day === own ? { className: ['is-this'] } : {}, words)];
  });
  return h('ol', { className: ['week-line', 'print-only', 'plain-list'] }, items);
}
