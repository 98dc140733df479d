import type { Almanac, NightRecord, RunNight } from '../../calendar/almanac-types.ts';
import { NoNightError } from '../../calendar/no-night-error.ts';
import type { CivilDate } from '../../calendar/rules.ts';
import { addDays } from '../../content/civil-date.ts';

/** The nights of all dates from `from` to `to`, without those that cannot be told (near a pole) or were left out. */
export function listKnownNights(almanac: Almanac, from: CivilDate, to: CivilDate): NightRecord[] {
  const records: NightRecord[] = [];
  for (let date = from; date <= to; date = addDays(date, 1)) {
    try {
      records.push(...almanac.nights(date, date));
    } catch (error) {
      if (!(error instanceof NoNightError)) throw error;
    }
  }
  return records;
}

/** The night that follows, also over the end of a month; nothing at the end of the years the almanac covers. */
export function findNightAfter(almanac: Almanac, record: NightRecord): NightRecord | undefined {
  return findNightAt(almanac, record.endsMs);
}

/** The night before; nothing at the beginning of the years the almanac covers. */
export function findNightBefore(almanac: Almanac, record: NightRecord): NightRecord | undefined {
  return findNightAt(almanac, record.beginsMs - 1);
}

function findNightAt(almanac: Almanac, instantMs: number): NightRecord | undefined {
  try {
    return almanac.nightAt(instantMs);
  } catch (error) {
    if (error instanceof RangeError) return undefined;
    throw error;
  }
}

/** The named nights that the calendar passes over between a night and the one after it, in order; mostly none. */
export function listPassedOver(run: readonly RunNight[], record: NightRecord, next: NightRecord): RunNight[] {
  const from = record.night.number;
  const to = next.night.number;
  if (record.month.firstDate !== next.month.firstDate) return [...run.slice(from), ...run.slice(0, to - 1)];
  return to > from ? run.slice(from, to - 1) : [];
}

/** Whether nights follow each other as the names do: within a month, none left out and none said twice. */
export function runsOn(records: readonly NightRecord[]): boolean {
  return records.every((record, place) => {
    const before = records[place - 1];
    if (before === undefined) return true;
    return record.month.firstDate === before.month.firstDate && record.night.number === before.night.number + 1;
  });
}
