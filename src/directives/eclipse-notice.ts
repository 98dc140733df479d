import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import type { NightRecord } from '../calendar/almanac-types.ts';
import { requireCivilZone } from '../calendar/civil.ts';
import { MS_PER_DAY, parseCivilDate } from '../calendar/day-number.ts';
import { type Eclipse, listEclipses } from '../calendar/eclipses.ts';
import { createMemo } from '../calendar/memo.ts';
import type { CivilDate, InstantMs, Place } from '../calendar/rules.ts';
import { readWallClock } from '../calendar/wall-clock.ts';
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

/** The midst of what is seen. */
function computeMidst({ seen }: Eclipse): InstantMs {
  return (seen.fromMs + seen.untilMs) / 2;
}

/** The eclipses of a date: of the Sun on that day, of the Moon from its noon to the next, whatever the nights begin with. */
export function listDateEclipses(place: Place, date: CivilDate): readonly Eclipse[] {
  return listWeekEclipses(place, date).filter((eclipse) => {
    const sinceNoonMs = eclipse.of === 'moon' ? MS_PER_DAY / 2 : 0;
    return readWallClock(computeMidst(eclipse) - sinceNoonMs, place.timeZone).date === date;
  });
}

/** The eclipses of a night of the calendar: of the Moon within it, of the Sun on the day whose date it carries. */
export function listNightEclipses(
  place: Place,
  { date, beginsMs, endsMs }: Pick<NightRecord, 'date' | 'beginsMs' | 'endsMs'>,
): readonly Eclipse[] {
  return listWeekEclipses(place, date).filter((eclipse) => {
    const midstMs = computeMidst(eclipse);
    if (eclipse.of === 'moon') return beginsMs <= midstMs && midstMs < endsMs;
    return readWallClock(midstMs, place.timeZone).date === date;
  });
}

/** A paragraph an eclipse; the cautions are left to the caller. */
export function renderEclipses(eclipses: readonly Eclipse[], labels: Labels, timeZone: string): ElementContent[] {
  return eclipses.map((eclipse) => h('p.eclipse', sayEclipse(eclipse, labels, timeZone)));
}
