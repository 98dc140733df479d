import type { NightRecord } from '../calendar/almanac-types.ts';
import { NoNightError } from '../calendar/no-night-error.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { addDays } from '../content/civil-date.ts';
import type { ResolvedWeek } from '../lesson/model.ts';
import { renderNightsIcs } from './night-ics.ts';
import type { PackFile } from './pack-plan.ts';

/** Name of the file with the week's nights as events. It is the teacher's: a night that a quiz asks for is in it. */
export const CALENDAR_PATH = 'calendar.ics';

/** The nights of a week, from the first date that is taught to the last, as an iCalendar file. */
export function planCalendarFile(week: ResolvedWeek): PackFile {
  const chunks = [...renderNightsIcs(week, listWeekNights(week))];
  return { path: CALENDAR_PATH, content: chunks.map((chunk) => `${chunk}\r\n`).join('') };
}

function* listWeekNights({ lessons, almanac }: ResolvedWeek): Generator<NightRecord> {
  const taught = new Map(lessons.map(({ tonight }) => [tonight.date, tonight]));
  const dates = [...taught.keys()];
  const [first, last] = [dates[0], dates.at(-1)];
  if (first === undefined || last === undefined) return;
  for (let date = first; date <= last; date = addDays(date, 1)) {
    const night = taught.get(date);
    if (night === undefined) yield* findNights(date, almanac);
    else yield night;
  }
}

/** The night of a date between two that are taught: none where it cannot be told, or where the place left the date out. */
function findNights(date: CivilDate, almanac: ResolvedWeek['almanac']): NightRecord[] {
  try {
    return [...almanac.nights(date, date)];
  } catch (error) {
    if (error instanceof NoNightError) return [];
    throw error;
  }
}
