import type { RunNight } from './almanac-types.ts';
import type { DayNumber } from './day-number.ts';
import { createMemo } from './memo.ts';
import type { MonthOpening } from './month-openings.ts';
import { moveNights } from './move-nights.ts';
import type { NightLine } from './night-line.ts';
import { opensMonth, type SkyRecord } from './records.ts';

/** Nights that a record may lie from what is computed: beyond, one of the two is wrong and a person must look. */
export const MOST_NIGHTS_OFF = 3;

/** What a record does to the computed calendar. */
export interface RecordPlace {
  readonly record: SkyRecord;
  /** The month whose beginning it fixes, and where; null when it fixes none. */
  readonly opens: { readonly lunation: number; readonly day: DayNumber } | null;
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

function findOpened(
  line: NightLine,
  months: ComputedMonths,
  record: SkyRecord,
  lunation: number,
): RecordPlace['opens'] {
  if (opensMonth(record)) return { lunation, day: record.day };
  // A night of the young month seen before its computed beginning: the month has begun.
  if (record.day < months.openingOf(lunation).nearDay) return { lunation, day: record.day };
  // A night of the old month seen on or after the computed beginning of the next: that one begins the night after.
  if (record.day < months.openingOf(lunation + 1).nearDay) return null;
  return { lunation: lunation + 1, day: line.zone.nextDay(record.day) };
}

/**
 * Puts records into the computed calendar. A record belongs to the month in which its name lies nearest to its date. A
 * first night, or an announced month, fixes the beginning of its month. Any other night fixes a beginning only where it
 * lies across one: a night of the new month before it begins, or a night of the old month after it ended.
 */
export function createRecordPlaces(line: NightLine, months: ComputedMonths): (record: SkyRecord) => RecordPlace {
  return createMemo(200, (record: SkyRecord): RecordPlace => {
    if (line.zone.findStartOfDay(record.day) === null) {
      return { record, opens: null, refused: true, computedDay: record.day, nightsOff: 0 };
    }
    const night = opensMonth(record) || record.kind === 'announced' ? undefined : record.night;
    const { lunation, computedDay, nightsOff } = findNearest(line, months, night, record.day);
    const refused = Math.abs(nightsOff) > MOST_NIGHTS_OFF;
    const opens = refused ? null : findOpened(line, months, record, lunation);
    return { record, opens, refused, computedDay, nightsOff };
  });
}
