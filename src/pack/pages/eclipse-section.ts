import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Eclipse } from '../../calendar/eclipses.ts';
import { renderEclipses } from '../../directives/eclipse-notice.ts';
import { listEclipseCare, sayCare } from '../../directives/sky-words.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';

/** What a section of eclipses is for: its class and its heading. */
const KINDS = {
  week: { className: 'week-eclipses', heading: 'eclipses-this-week' },
  date: { className: 'date-eclipses', heading: 'eclipses-of-date' },
} as const;

/** Eclipses under a heading, with the cautions; nothing when there are none. */
export function renderEclipseSection(
  kind: keyof typeof KINDS,
  eclipses: readonly Eclipse[],
  { almanac, labels }: ResolvedWeek,
): Element[] {
  if (eclipses.length === 0) return [];
  const { className, heading } = KINDS[kind];
  return [
    h('section', { className: [className], ariaLabelledBy: 'eclipses-title' }, [
      h('h2', { id: 'eclipses-title' }, labels.text(heading)),
      ...renderEclipses(eclipses, labels, almanac.place.timeZone),
      h('p', { className: ['sky-care'] }, sayCare(listEclipseCare(eclipses), labels)),
    ]),
  ];
}
