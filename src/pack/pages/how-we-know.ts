import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { requireCivilZone } from '../../calendar/civil.ts';
import { parseCivilDate, renderCivilDate } from '../../calendar/day-number.ts';
import type { CivilDate, InstantMs, PhaseName } from '../../calendar/rules.ts';
import { fillLabel } from '../../content/fill-label.ts';
import { renderName } from '../../content/render-name.ts';
import type { ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';

/** The rule of the calendar in sentences, the instants behind the lesson's night, and whose word comes first. */
export function renderHowWeKnow(week: ResolvedWeek, lesson: ResolvedLesson): ElementContent[] {
  const { labels } = week;
  return [
    h('h2', labels.text('how-we-know')),
    h('p', [
      ...renderCalendarTitle(week),
      text(` ${labels.text(`day-begins-${week.calendar.dayBegins}`)} `),
      text(describeMonthRule(week)),
    ]),
    ...renderInstants(week, lesson),
    h('p', renderKeeperLine(week)),
  ];
}

/** The calendar's name, what its file says of itself, and whose word comes first. */
export function renderKeeperNote(week: ResolvedWeek): ElementContent[] {
  return [h('p', renderCalendarTitle(week)), h('p', renderKeeperLine(week))];
}

/** Who keeps the calendar, that their word comes before what is computed, and that nothing here is a tide table. */
export function renderKeeperLine({ labels, calendar }: ResolvedWeek): ElementContent[] {
  const keeper = h('strong', calendar.keeper);
  return [...fillLabel(labels, 'keeper-first', { keeper: [keeper] }), text(` ${labels.text('not-a-tide-table')}`)];
}

function renderCalendarTitle({ calendar, labels }: ResolvedWeek): ElementContent[] {
  const title = h('strong', [renderName(calendar.title, calendar.language)]);
  const named = fillLabel(labels, 'calendar-named', { title: [title] });
  return calendar.note === undefined ? named : [...named, text(` ${calendar.note}`)];
}

function describeMonthRule({ calendar, labels }: ResolvedWeek): string {
  const { at, offset } = calendar.monthBegins;
  const rule = labels.text(`month-begins-${at}`);
  if (offset === 0) return rule;
  return `${rule} ${labels.count(offset > 0 ? 'nights-later' : 'nights-earlier', Math.abs(offset))}`;
}

/** The instant that began the month and the principal phase within the lesson's night, if one is. */
function renderInstants(week: ResolvedWeek, lesson: ResolvedLesson): Element[] {
  const { almanac, calendar, labels } = week;
  const { month, date } = lesson.tonight;
  const beginning = renderCivilDate(parseCivilDate(month.firstDate) - calendar.monthBegins.offset);
  const instants = new Map<InstantMs, PhaseName>();
  for (const night of [beginning, date]) {
    const phase = findPhase(week, night);
    if (phase !== null) instants.set(phase.atMs, phase.name);
  }
  if (instants.size === 0) return [];
  const zone = requireCivilZone(almanac.place.timeZone);
  const items = Array.from(instants, ([atMs, name]) => {
    const local = zone.renderLocal(atMs);
    const when = { date: labels.date(local.slice(0, 10), 'day'), time: labels.clock(local.slice(11, 16)) };
    return h('li', labels.text('phase-at', { phase: labels.text(`phase-${name}`), ...when }));
  });
  return [h('p', labels.text('computed-for-here')), h('ul', items)];
}

function findPhase({ almanac }: ResolvedWeek, date: CivilDate): { name: PhaseName; atMs: InstantMs } | null {
  return almanac.skyOf(almanac.nightOn(date)).phase;
}

function text(value: string): ElementContent {
  return { type: 'text', value };
}
