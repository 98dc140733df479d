import type { Element } from 'hast';
import { h } from 'hastscript';
import { renderName } from '../../content/render-name.ts';
import { renderMoon } from '../../drawing/moon.ts';
import type { PageContext, PlacedLesson } from './page-context.ts';
import { WEEK_ID } from './week-table.ts';

const MOON_RADIUS_PX = 18;

/** The days as tabs, each of which leads to its sheet, and after them a way to the week at a glance. */
export function renderWeekStrip(context: PageContext, days: readonly PlacedLesson[][]): Element {
  const { labels } = context.week;
  const whole = h('li', { className: ['week-tab'] }, [
    h('a', { className: ['week-link'], href: `#${WEEK_ID}` }, labels.text('whole-week')),
  ]);
  return h('nav', { className: ['strip'], ariaLabel: labels.text('days-of-week') }, [
    h('ol', { className: ['plain-list'] }, [
      ...days.flatMap(([first]) => (first === undefined ? [] : [renderTab(context, first)])),
      ...(days.length === 0 ? [] : [whole]),
    ]),
  ]);
}

/** A day of the strip: date, night, the Moon. */
function renderTab({ week, view }: PageContext, { lesson }: PlacedLesson): Element {
  const { tonight, head } = lesson;
  return h('li', [
    h('a', { className: ['day-tab'], href: `#${head.day}` }, [
      h('span', { className: ['tab-date'] }, [
        h('time', { dateTime: tonight.date }, week.labels.date(tonight.date, 'short')),
        h('span', { className: ['today-flag'], hidden: true }, ` ${week.labels.text('today')}`),
      ]),
      ' ',
      h('span', { className: ['tab-night'] }, [renderName(tonight.night.name, view.namesLanguage)]),
      renderMoon(week.almanac.moonBestSeen(tonight), { radius: MOON_RADIUS_PX }),
    ]),
  ]);
}
