import type { RunNight } from './almanac-types.ts';
import type { DayNumber } from './day-number.ts';
import { createMemo } from './memo.ts';
import type { MonthOpening } from './month-openings.ts';
import { moveNights } from './move-nights.ts';
import type { NightLine } from './night-line.ts';
import { opensMonth, type SkyRecord } from './records.ts';

/** Nights that a record may lie from what is computed: beyond, one of the two is wrong and a person must look. */
export const MOST_NIGHTS_OFF = 3;

/** Where a record stands in the computed calendar. */
export interface RecordPlace {
  readonly record: SkyRecord;
  /** The month in which its name lies nearest to its date. */
  readonly lunation: number;
  /** The record lies too far from the computed calendar, or on a date that the place left out, and is passed over. */
  readonly refused: boolean;
  /** The date that the computed calendar gives to what was recorded. */
  readonly computedDay: DayNumber;
  /** How many nights after it the record lies; negative for before. */
  readonly nightsOff: number;
}

/** What placing a record needs to know of the computed calendar. */
export interface ComputedMonths {
  readonly openingOf: (lunation: number) => MonthOpening;
  /** The names of a month's nights by the rule alone, without records. */
  readonly namesOf: (lunation: number) => readonly RunNight[];
  /** The month that holds a date by the rule alone. */
  readonly lunationOf: (day: DayNumber) => number;
}

/** Existing dates from one to another, negative when the second is earlier. */
export function countNights(line: NightLine, from: DayNumber, to: DayNumber): number {
  if (to < from) return -countNights(line, to, from);
  let nights = 0;
  for (let day = from; day < to; day = line.zone.nextDay(day)) nights += 1;
  return nights;
}

/** The place nearest to `near` at which a name stands among the names of a month, or would stand by counting. */
function findNightOfName(names: readonly RunNight[], night: RunNight, near: number): number {
  let best = night.number - 1;
  let found = false;
  for (const [index, { number }] of names.entries()) {
    if (number !== night.number || (found && Math.abs(index - near) >= Math.abs(best - near))) continue;
    best = index;
    found = true;
  }
  if (found) return best;
  const before = names.findLastIndex(({ number }) => number < night.number);
  return before + 1;
}

/** The month, of three neighbours, in which a name lies nearest to a date. */
function findNearest(line: NightLine, months: ComputedMonths, night: RunNight | undefined, day: DayNumber) {
  const around = months.lunationOf(day);
  const choices = [around, around + 1, around - 1].map((lunation) => {
    const { nearDay } = months.openingOf(lunation);
    const names = night === undefined ? [] : months.namesOf(lunation);
    const index = night === undefined ? 0 : findNightOfName(names, night, countNights(line, nearDay, day));
    const computedDay = moveNights(line, nearDay, index);
    return { lunation, computedDay, nightsOff: countNights(line, computedDay, day) };
  });
  return choices.reduce((best, choice) => (Math.abs(choice.nightsOff) < Math.abs(best.nightsOff) ? choice : best));
}

/**
 * Puts records into the computed calendar. A record belongs to the month in which its name lies nearest to its date,
 * whatever other records say.
 */
export function createRecordPlaces(line: NightLine, months: ComputedMonths): (record: SkyRecord) => RecordPlace {
  return createMemo(200, (record: SkyRecord): RecordPlace => {
    const { day } = record;
    if (line.zone.findStartOfDay(day) === null) {
      const lunation = months.lunationOf(line.zone.nextDay(day));
      return { record, lunation, refused: true, computedDay: day, nightsOff: 0 };
    }
    const night = record.kind === 'announced' || opensMonth(record) ? undefined : record.night;
    const nearest = findNearest(line, months, night, day);
    return { record, ...nearest, refused: Math.abs(nearest.nightsOff) > MOST_NIGHTS_OFF };
  });
}
