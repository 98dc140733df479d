import type { Element } from 'hast';
import { h } from 'hastscript';
import type { NightRecord } from '../../calendar/almanac-types.ts';
import { renderScore } from '../../drawing/score.ts';
import type { ScoreNight } from '../../drawing/score-model.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';
import type { PageContext } from './page-context.ts';
import type { ScoreMonth } from './score-months.ts';

/** The sheet for the wall: the month as music. On a small screen it scrolls in its own frame. */
export function renderScoreSheet({ week, view }: PageContext, month: ScoreMonth, idPrefix: string): Element {
  const { calendar, labels, plan, school } = week;
  const dates = labels.text('date-range', {
    from: labels.date(month.firstDate, 'day'),
    to: labels.date(month.lastDate, 'long'),
  });
  const picture = renderScore({
    title: month.name,
    subtitle: [{ name: calendar.title }, ` · ${dates} · ${school.name}`],
    footer: [`${describePlace(week)} ${labels.text('keeper-first', { keeper: calendar.keeper })}`],
    legend: { strong: labels.text('score-strong'), beat: labels.text('score-beat') },
    groups: month.groups.map(({ name, nights }) => ({
      name,
      nights: nights.map((record, index) => describeNight(week, month, record, index === 0)),
    })),
    namesLanguage: view.namesLanguage,
    weekLabel: plan.title,
    pictureTitle: labels.text('score-picture'),
    idPrefix,
  });
  return h('section', { className: ['score-frame'], ariaLabel: dates, tabIndex: 0 }, [picture]);
}

function describeNight(week: ResolvedWeek, month: ScoreMonth, record: NightRecord, strong: boolean): ScoreNight {
  const cue = week.gestures.gestures[record.night.gesture ?? '']?.cue;
  return {
    name: record.night.name,
    nightOfMonth: record.nightOfMonth,
    date: week.labels.date(record.date, 'short'),
    view: week.almanac.moonHighest(record),
    strong,
    inWeek: month.taught.includes(record.date),
    ...(cue === undefined ? {} : { cue }),
  };
}

function describePlace({ labels, school }: ResolvedWeek): string {
  const { latitudeDegrees } = school.place;
  const n = Math.round(Math.abs(latitudeDegrees));
  const latitude = labels.text(latitudeDegrees < 0 ? 'latitude-south' : 'latitude-north', { n });
  return labels.text('score-seen-from', { latitude });
}
