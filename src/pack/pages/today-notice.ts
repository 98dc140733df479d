import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { parseCivilDate, renderCivilDate } from '../../calendar/day-number.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import type { PageContext, PlacedLesson } from './page-context.ts';

/** Words that hold from a date on, until the next ones do. */
interface Spell {
  readonly from: CivilDate;
  readonly words: ElementContent[];
}

/** Before every date that there is. */
const EVER = '0000-00-00';

/**
 * What to say of the present day, which only the reader's device knows: for each stretch of dates a line, all of them
 * hidden until the page's script, which takes the date in the school's time zone, shows the one that holds.
 */
export function renderTodayNotice(context: PageContext, days: readonly PlacedLesson[][]): Element[] {
  const spells = listSpells(context, days);
  if (spells.length === 0) return [];
  const { almanac, labels } = context.week;
  return [
    h(
      'div',
      {
        className: ['today-notice'],
        dataTimeZone: almanac.place.timeZone,
        role: 'note',
        ariaLabel: labels.text('today'),
        hidden: true,
      },
      spells.map(({ from, words }) => h('p', { dataFrom: from, hidden: true }, words)),
    ),
  ];
}

function listSpells(context: PageContext, days: readonly PlacedLesson[][]): Spell[] {
  const { labels } = context.week;
  const leads = days.flatMap(([first]) => first ?? []);
  const spells = leads.flatMap((lead, index): Spell[] => {
    const { date } = lead.lesson.tonight;
    const after = nextDate(date);
    const following = leads[index + 1];
    const today = { from: date, words: sayToday(context, lead) };
    if (following === undefined) return [today, { from: after, words: [text(labels.text('pack-is-late'))] }];
    return following.lesson.tonight.date === after
      ? [today]
      : [today, { from: after, words: [h('span', sayGap(context, following))] }];
  });
  return leads.length === 0 ? [] : [{ from: EVER, words: [text(labels.text('pack-is-early'))] }, ...spells];
}

function sayToday({ week, view }: PageContext, { lesson, paths }: PlacedLesson): ElementContent[] {
  const { labels } = week;
  const { date, night } = lesson.tonight;
  const words = fillLabel(labels, 'today-night', {
    date: [h('strong', labels.date(date, 'day'))],
    night: [h('strong', [renderName(night.name, view.namesLanguage)])],
  });
  return [
    h('span', words),
    text(' '),
    h('span', { className: ['today-ways'] }, [
      h('a', { href: `#${lesson.head.day}` }, labels.text('go-to-today')),
      ' ',
      h('a', { href: paths.page }, labels.text('open-lesson')),
    ]),
  ];
}

function sayGap({ week: { labels } }: PageContext, { lesson }: PlacedLesson): ElementContent[] {
  const day = h('a', { href: `#${lesson.head.day}` }, labels.date(lesson.tonight.date, 'day'));
  return fillLabel(labels, 'no-lesson-today', { day: [day] });
}

function nextDate(date: CivilDate): CivilDate {
  return renderCivilDate(parseCivilDate(date) + 1);
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}
