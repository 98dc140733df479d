import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Eclipse } from '../calendar/eclipses.ts';
import { computeEveningSky, type EveningSky } from '../calendar/evening-sky.ts';
import { requireLocalInstant } from '../calendar/local-instant.ts';
import { defineDirective, type ViewContext } from './definition.ts';
import { listWeekEclipses, renderEclipses } from './eclipse-notice.ts';
import { listEclipseCare, listEveningCare, sayCare, sayEvening, saySchoolHours } from './sky-words.ts';

/** The Moon of a day's school hours and evening, and the eclipses of its week that are still to come. */
interface SkyNotice {
  readonly sky: EveningSky;
  readonly eclipses: readonly Eclipse[];
  readonly timeZone: string;
}

export const sky = defineDirective({
  name: 'sky',
  forms: ['leaf'],
  about:
    'When and where to look for the Moon that evening, whether it is up in school hours, eclipses still to come in the week, and the cautions.',
  example: '::sky{on=friday}',
  label: { use: 'none' },
  attributes: {
    on: { type: 'day', about: "a day of this week; left out, the lesson's own day" },
  },
  resolve(_written, { on }, { almanac, dates, lesson, school }) {
    const date = on === undefined ? lesson.date : (dates.get(on) ?? lesson.date);
    const { place } = almanac;
    const classMs = requireLocalInstant(place.timeZone, date, school.classBegins);
    const notice: SkyNotice = {
      sky: computeEveningSky(almanac, date, school),
      eclipses: listWeekEclipses(place, date).filter(({ seen }) => seen.untilMs > classMs),
      timeZone: place.timeZone,
    };
    return { learner: notice, teacher: notice, outdoors: true };
  },
  learnerView: (notice, _children, view) => renderSky(notice, view),
  teacherView: (notice, _children, view) => renderSky(notice, view),
});

function renderSky({ sky: evening, eclipses, timeZone }: SkyNotice, { labels }: ViewContext): ElementContent[] {
  return [
    h('section.sky', [
      h('p.sky-date', labels.date(evening.date, 'day')),
      h('p.sky-look', sayEvening(evening, labels, timeZone)),
      h('p.sky-school', saySchoolHours(evening, labels, timeZone)),
      ...renderEclipses(eclipses, labels, timeZone),
      h('p.sky-care', sayCare([...listEveningCare(evening), ...listEclipseCare(eclipses)], labels)),
    ]),
  ];
}
