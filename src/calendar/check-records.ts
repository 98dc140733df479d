import { renderCivilDate } from './day-number.ts';
import { createLunations } from './lunations.ts';
import { createMonths, type Months } from './months.ts';
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
  /** An earlier name on a later night of the month, or more than three nights' difference in how far two lie off. */
  | { readonly what: 'out-of-step'; readonly record: number; readonly other: number }
  /** The month that begins or ends with this record has other than 28 to 31 nights. */
  | { readonly what: 'month-length'; readonly record: number; readonly firstDate: CivilDate; readonly length: number };

/** Nights that a month can have under observation: the design. */
const SHORTEST_MONTH = 28;
const LONGEST_MONTH = 31;

/** A record's place in the list, and what became of it. */
interface Placed extends RecordPlace {
  readonly index: number;
}

function checkPlace(line: NightLine, { index, record, refused, computedDay, nightsOff }: Placed): RecordFault[] {
  if (line.zone.findStartOfDay(record.day) === null) return [{ what: 'no-such-date', record: index }];
  return refused ? [{ what: 'too-far', record: index, computedDate: renderCivilDate(computedDay), nightsOff }] : [];
}

/** Whether the beginning that a record gives a month holds, and how long the months on both sides of it are. */
function checkBeginning(line: NightLine, months: Months, { index, record, opens }: Placed): RecordFault[] {
  const beginning = opens && months.findBeginning(opens.lunation);
  if (!opens || !beginning?.record) return [];
  if (beginning.day !== opens.day) {
    const other = months.records.indexOf(beginning.record);
    return [{ what: 'other-beginning', record: index, other, otherDate: renderCivilDate(beginning.day) }];
  }
  if (beginning.record !== record) return [];
  return [opens.lunation - 1, opens.lunation].flatMap((lunation) => {
    const first = months.findBeginning(lunation);
    const next = months.findBeginning(lunation + 1);
    if (!first || !next) return [];
    const length = countNights(line, first.day, next.day);
    if (length >= SHORTEST_MONTH && length <= LONGEST_MONTH) return [];
    return [{ what: 'month-length' as const, record: index, firstDate: renderCivilDate(first.day), length }];
  });
}

/**
 * Whether an observed night keeps pace with the one before it that counts, or with a recorded first night: both lie
 * about as far from where the calendar has them, so that names which it leaves out or repeats itself are no fault.
 */
function checkPace(months: Months, { index, record, refused, nightsOff }: Placed): RecordFault[] {
  if (refused || opensMonth(record) || record.kind === 'announced') return [];
  const beginning = months.findBeginning(months.lunationNear(record.day));
  const earlier = months.records.flatMap((other, place) => {
    const isFirst = other === beginning?.record && opensMonth(other);
    const isSeen = beginning && other.kind === 'observation' && other.day >= beginning.day && !opensMonth(other);
    const placed = months.placeOf(other);
    if (other.day >= record.day || placed.refused || !(isFirst || isSeen)) return [];
    const number = isFirst || other.kind === 'announced' ? 1 : other.night.number;
    return [{ place, day: other.day, number, nightsOff: placed.nightsOff }];
  });
  const last = earlier.reduce<(typeof earlier)[number] | null>(
    (best, each) => (best && best.day >= each.day ? best : each),
    null,
  );
  if (last === null) return [];
  const isInOrder = record.night.number >= last.number;
  const isInStep = isInOrder && Math.abs(nightsOff - last.nightsOff) <= MOST_NIGHTS_OFF;
  return isInStep ? [] : [{ what: 'out-of-step', record: index, other: last.place }];
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
  return months.records.flatMap((record, index) => {
    const placed = { ...months.placeOf(record), index };
    const fault = checkPlace(line, placed);
    return fault.length > 0 ? fault : [...checkBeginning(line, months, placed), ...checkPace(months, placed)];
  });
}
