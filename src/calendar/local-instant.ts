import { requireCivilZone } from './civil.ts';
import { MS_PER_DAY, parseCivilDate } from './day-number.ts';
import type { CivilDate, InstantMs } from './rules.ts';

const MS_PER_MINUTE = 60_000;

/**
 * The instant at which the clock on the wall shows a time on a date.
 * A time that daylight saving skips gives the instant as far after the change; one that comes twice, the first.
 * @param clock `HH:MM`, 24-hour.
 * @throws RangeError for a date that is not real or that the zone left out.
 */
export function requireLocalInstant(timeZone: string, date: CivilDate, clock: string): InstantMs {
  const zone = requireCivilZone(timeZone);
  const day = parseCivilDate(date);
  const startMs = zone.findStartOfDay(day);
  if (startMs === null) throw new RangeError(`The date ${date} was left out in ${timeZone}.`);
  const minutes = Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3));
  const localMs = day * MS_PER_DAY + minutes * MS_PER_MINUTE;
  // A change of offset on the date lies between these two; without one they are the same.
  const before = zone.offsetMsAt(startMs - 1);
  const after = zone.offsetMsAt(startMs + MS_PER_DAY);
  const shown = [localMs - before, localMs - after].filter((ms) => ms + zone.offsetMsAt(ms) === localMs);
  return shown.length === 0 ? localMs - before : Math.min(...shown);
}
