import { requireCivilZone } from './civil.ts';
import { renderCivilDate } from './day-number.ts';
import type { CivilDate, InstantMs } from './rules.ts';

/** What the calendar and the clock on the wall show. */
export interface WallClock {
  readonly date: CivilDate;
  /** `HH:MM`, 24-hour, floored to the minute. */
  readonly clock: string;
}

/**
 * Date and time of an instant in a zone.
 * @param timeZone IANA name, or `UTC`.
 * @throws RangeError for a zone that is not known.
 */
export function readWallClock(atMs: InstantMs, timeZone: string): WallClock {
  const zone = requireCivilZone(timeZone);
  return { date: renderCivilDate(zone.dayAt(atMs)), clock: zone.renderClock(atMs) };
}
