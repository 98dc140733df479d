import type { Element } from 'hast';
import { h } from 'hastscript';
import { CALENDAR_PATH } from '../plan-calendar.ts';
import type { PageContext } from './page-context.ts';

/** A line that leads to the week's nights as events, on a page at the pack's root. */
export function renderCalendarLink({ week: { labels } }: PageContext): Element {
  return h('p', { className: ['link-list', 'screen-only'] }, [
    h('a', { href: CALENDAR_PATH, type: 'text/calendar' }, labels.text('nights-for-calendar')),
    ' ',
    h('span', { className: ['sheet-kind'] }, CALENDAR_PATH),
  ]);
}
