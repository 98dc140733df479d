import type { Almanac } from '../calendar/almanac-types.ts';
import { NoNightError } from '../calendar/no-night-error.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { addDays, clampDate } from '../content/civil-date.ts';

/** What a date is called. */
export interface NightName {
  readonly night: string;
  /** True when the name was already given to an earlier night of this month. */
  readonly repeat: boolean;
  /** 1 on the month's first night. */
  readonly nightOfMonth: number;
  readonly month: string;
}

/** What a date was called, and what it is called now; null where the calendar cannot tell. */
export interface NightChange {
  readonly date: CivilDate;
  readonly before: NightName | null;
  readonly after: NightName | null;
}

/** A night that was seen may change the month it is in and, by its length, those beside it. */
const DAYS_COMPARED = 62;

/** The dates about one whose names two almanacs of a place differ over. */
export function listNightChanges(before: Almanac, after: Almanac, date: CivilDate): readonly NightChange[] {
  const last = clampDate(addDays(date, DAYS_COMPARED));
  const changes: NightChange[] = [];
  for (let day = clampDate(addDays(date, -DAYS_COMPARED)); day <= last; day = addDays(day, 1)) {
    const change = { date: day, before: findName(before, day), after: findName(after, day) };
    if (sayNightName(change.before) !== sayNightName(change.after)) changes.push(change);
  }
  return changes;
}

/** null for a date that the place left out, too. */
function findName(almanac: Almanac, date: CivilDate): NightName | null {
  try {
    const [record] = almanac.nights(date, date);
    if (record === undefined) return null;
    const { night, repeat, nightOfMonth, month } = record;
    return { night: night.name, repeat, nightOfMonth, month: month.name };
  } catch (error) {
    if (error instanceof NoNightError) return null;
    throw error;
  }
}

/** `Hidden Moon, night 1 of Frost Month`. */
export function sayNightName(name: NightName | null): string {
  if (name === null) return 'not known';
  const { night, repeat, nightOfMonth, month } = name;
  return `${night}${repeat ? ' (again)' : ''}, night ${nightOfMonth} of ${month}`;
}
