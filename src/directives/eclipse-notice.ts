import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { requireCivilZone } from '../calendar/civil.ts';
import { MS_PER_DAY, parseCivilDate } from '../calendar/day-number.ts';
import { type Eclipse, listEclipses } from '../calendar/eclipses.ts';
import { createMemo } from '../calendar/memo.ts';
import type { CivilDate, InstantMs, Place } from '../calendar/rules.ts';
import { addDays, computeMonday } from '../content/civil-date.ts';
import type { Labels } from '../content/labels.ts';
import { sayEclipse } from './sky-words.ts';

/** A date that the place left out begins when the next one does. */
function findStart(timeZone: string, date: CivilDate): InstantMs {
  const zone = requireCivilZone(timeZone);
  const day = parseCivilDate(date);
  const startMs = zone.findStartOfDay(day) ?? zone.findStartOfDay(zone.nextDay(day));
  if (startMs === null) throw new Error(`No start was found for ${date} in ${timeZone}.`);
  return startMs;
}

/** A week's eclipses by place and Monday: every `::sky` of a week and its start page ask for the same. */
const listOfPlace = createMemo(8, (place: Place) =>
  createMemo(64, (monday: CivilDate) => {
    const fromMs = findStart(place.timeZone, monday);
    const untilMs = findStart(place.timeZone, addDays(monday, 7)) + MS_PER_DAY / 2;
    return listEclipses(place, fromMs, untilMs).filter(({ kind }) => kind !== 'penumbral');
  }),
);

/**
 * The eclipses to announce in the week that holds a date: from Monday to the Monday noon after it, so that the last night
 * is in it. Lunar eclipses of the penumbra alone are left out: hardly anyone sees them.
 */
export function listWeekEclipses(place: Place, date: CivilDate): readonly Eclipse[] {
  return listOfPlace(place)(computeMonday(date));
}

/** A paragraph an eclipse; the cautions are left to the caller. */
export function renderEclipses(eclipses: readonly Eclipse[], labels: Labels, timeZone: string): ElementContent[] {
  return eclipses.map((eclipse) => h('p.eclipse', sayEclipse(eclipse, labels, timeZone)));
}
