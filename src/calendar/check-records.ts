import { type DayNumber, renderCivilDate } from './day-number.ts';
import { createLunations } from './lunations.ts';
import { createMonths, type Months } from './months.ts';
import { moveNights } from './move-nights.ts';
import { createNightLine, type NightLine } from './night-line.ts';
import { countNights, MOST_NIGHTS_OFF, type RecordPlace } from './record-places.ts';
import { opensMonth } from './records.ts';
import type { CalendarRules, CivilDate, Place } from './rules.ts';

/** What is wrong with a record; `record` and `other` are places in the list: announced months first, then observations. */
export type RecordFault =
  /** Passed over: it lies further from the computed date than three nights. */
  | { readonly what: 'too-far'; readonly record: number; readonly computedDate: CivilDate; readonly nightsOff: number }
  /** The date was left out at this place. */
  | { readonly what: 'no-such-date'; readonly record: number }
  /** Passed over: a weightier record gives the month another beginning. */
  | { readonly what: 'other-beginning'; readonly record: number; readonly other: number; readonly otherDate: CivilDate }
  /** Passed over: by a weightier record its month begins only after it, or the next month by then. */
  | {
      readonly what: 'outside-month';
      readonly record: number;
      readonly other: number;
      readonly side: 'before' | 'after';
      /** The first night of its own month, or of the next one. */
      readonly firstDate: CivilDate;
    }
  /** Its month begins with it, and so without the names before it. */
  | {
      readonly what: 'first-name-left-out';
      readonly record: number;
      readonly leftOut: readonly string[];
      /** Where the first night would be that goes with the record. */
      readonly firstDate: CivilDate;
    }
  /** An earlier name on a later night of the month, or more than three nights' difference in how far two lie off. */
  | { readonly what: 'out-of-step'; readonly record: number; readonly other: number }
  /** The month that begins or ends with this record has other than 28 to 31 nights. */
  | { readonly what: 'month-length'; readonly record: number; readonly firstDate: CivilDate; readonly length: number };

/** Nights that a month can have under observation: the design. */
const SHORTEST_MONTH = 28;
const LONGEST_MONTH = 31;

/** A record's place in the list and in the computed calendar. */
interface Placed extends RecordPlace {
  readonly index: number;
}

function checkPlace(line: NightLine, { index, record, refused, computedDay, nightsOff }: Placed): RecordFault[] {
  if (line.zone.findStartOfDay(record.day) === null) return [{ what: 'no-such-date', record: index }];
  return refused ? [{ what: 'too-far', record: index, computedDate: renderCivilDate(computedDay), nightsOff }] : [];
}

/** Whether the beginning that a first night or an announcement gives its month holds. */
function checkBeginning(months: Months, { index, record, lunation }: Placed): RecordFault[] {
  const beginning = months.findBeginning(lunation);
  if (!opensMonth(record) || !beginning?.record || beginning.day === record.day) return [];
  const other = months.records.indexOf(beginning.record);
  return [{ what: 'other-beginning', record: index, other, otherDate: renderCivilDate(beginning.day) }];
}

/** Whether any other night lies within its own month. */
function checkWithinMonth(months: Months, { index, record, lunation }: Placed): RecordFault[] {
  if (opensMonth(record)) return [];
  const first = months.findBeginning(lunation);
  const next = months.findBeginning(lunation + 1);
  const isBefore = first !== null && record.day < first.day;
  const isAfter = next !== null && record.day >= next.day;
  const beginning = isBefore ? first : isAfter ? next : null;
  if (!beginning?.record) return [];
  const other = months.records.indexOf(beginning.record);
  const side = isBefore ? 'before' : 'after';
  return [{ what: 'outside-month', record: index, other, side, firstDate: renderCivilDate(beginning.day) }];
}

/** Whether a month that begins with an observed night begins without names that the rule alone would give it. */
function checkFirstName(line: NightLine, months: Months, placed: Placed): RecordFault[] {
  const { index, record, lunation, computedDay, nightsOff } = placed;
  if (record.kind === 'announced' || opensMonth(record)) return [];
  const { nearDay } = months.openingOf(lunation);
  if (months.findBeginning(lunation)?.day !== record.day || computedDay === nearDay) return [];
  const leftOut = months.run.slice(0, record.night.number - 1).map(({ name }) => name);
  const firstDate = renderCivilDate(moveNights(line, nearDay, nightsOff));
  return [{ what: 'first-name-left-out', record: index, leftOut, firstDate }];
}

/** How long the months on both sides of a beginning are that the record fixed. */
function checkLengths(line: NightLine, months: Months, { index, record, lunation }: Placed): RecordFault[] {
  const fixed = [lunation, lunation + 1].filter((each) => months.findBeginning(each)?.record === record);
  return fixed
    .flatMap((each) => [each - 1, each])
    .flatMap((each) => {
      const first = months.findBeginning(each);
      const next = months.findBeginning(each + 1);
      if (!first || !next) return [];
      const length = countNights(line, first.day, next.day);
      if (length >= SHORTEST_MONTH && length <= LONGEST_MONTH) return [];
      return [{ what: 'month-length' as const, record: index, firstDate: renderCivilDate(first.day), length }];
    });
}

/** A record of the same month that counts, and comes before the one that is checked. */
interface EarlierRecord {
  readonly index: number;
  readonly day: DayNumber;
  /** Of the name in the calendar's list. */
  readonly number: number;
  readonly nightsOff: number;
}

/** The last record before a date that tells how far a month lies off: its first night, or a night within it. */
function findEarlier(months: Months, lunation: number, before: DayNumber): EarlierRecord | null {
  const beginning = months.findBeginning(lunation);
  let last: EarlierRecord | null = null;
  for (const [index, record] of months.records.entries()) {
    const { day } = record;
    if (beginning === null || day < beginning.day || day >= before || (last && last.day >= day)) continue;
    const place = months.placeOf(record);
    if (place.refused || place.lunation !== lunation) continue;
    if (opensMonth(record) && record !== beginning.record) continue;
    const number = record.kind === 'announced' ? 1 : record.night.number;
    last = { index, day, number, nightsOff: place.nightsOff };
  }
  return last;
}

/**
 * Whether an observed night keeps pace with the one before it that counts, or with a recorded first night: both lie
 * about as far from where the calendar has them, so that names which it leaves out or repeats itself are no fault.
 */
function checkPace(months: Months, { index, record, lunation, nightsOff }: Placed): RecordFault[] {
  if (record.kind === 'announced' || opensMonth(record)) return [];
  const last = findEarlier(months, lunation, record.day);
  if (last === null) return [];
  const isInOrder = record.night.number >= last.number;
  const isInStep = isInOrder && Math.abs(nightsOff - last.nightsOff) <= MOST_NIGHTS_OFF;
  return isInStep ? [] : [{ what: 'out-of-step', record: index, other: last.index }];
}

function checkRecord(line: NightLine, months: Months, placed: Placed): RecordFault[] {
  const misplaced = [
    ...checkPlace(line, placed),
    ...(placed.refused ? [] : [...checkBeginning(months, placed), ...checkWithinMonth(months, placed)]),
  ];
  if (misplaced.length > 0) return misplaced;
  return [...checkFirstName(line, months, placed), ...checkLengths(line, months, placed), ...checkPace(months, placed)];
}

/**
 * Holds what was seen and announced against the computed calendar of a place.
 * @returns The faults in the order of the list; none where there are no records.
 * @throws RangeError as `createAlmanac` does, and for a record of a night that the calendar does not have.
 */
export function checkRecords(rules: CalendarRules, place: Place): readonly RecordFault[] {
  if (rules.observations.length === 0 && rules.announcedMonths.length === 0) return [];
  const line = createNightLine(rules.dayBegins, place);
  const months = createMonths(rules, line, createLunations());
  return months.records.flatMap((record, index) => checkRecord(line, months, { ...months.placeOf(record), index }));
}
