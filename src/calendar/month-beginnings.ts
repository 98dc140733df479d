import type { RunNight } from './almanac-types.ts';
import { type DayNumber, renderCivilDate } from './day-number.ts';
import { findHolding } from './find-holding.ts';
import type { Lunations } from './lunations.ts';
import { createMemo } from './memo.ts';
import { computeMonthNames, findAnchors, listDays } from './month-nights.ts';
import type { MonthOpening } from './month-openings.ts';
import type { NightLine } from './night-line.ts';
import { NoNightError } from './no-night-error.ts';
import { type ComputedMonths, createRecordPlaces, type RecordPlace } from './record-places.ts';
import { opensMonth, type SkyRecord } from './records.ts';

/** The beginning of a month as it is, and the record that fixed it, if one did. */
export interface MonthBeginning {
  readonly day: DayNumber;
  readonly record: SkyRecord | null;
}

/** Where months begin, by the rule and by what was seen and announced. */
export interface MonthBeginnings {
  placeOf(record: SkyRecord): RecordPlace;
  /** The records, in order of weight, that may bear on the nights from one date to another. */
  listPlaces(from: DayNumber, to: DayNumber): readonly RecordPlace[];
  /** How the month of a lunation begins; null where no crescent can be told and no record gives it. */
  findBeginning(lunation: number): MonthBeginning | null;
  /** @throws NoNightError where no crescent can be told and no record gives the beginning. */
  requireBeginning(lunation: number): MonthBeginning;
  /** The lunation of the month that holds the night of an existing date. @throws NoNightError as above. */
  lunationHolding(day: DayNumber): number;
}

/** What beginnings are worked out from. */
interface BeginningSource {
  /** All named nights in order. */
  readonly run: readonly RunNight[];
  readonly records: readonly SkyRecord[];
  readonly line: NightLine;
  readonly lunations: Lunations;
  /** How the rule alone opens the month of a lunation. */
  readonly openingOf: (lunation: number) => MonthOpening;
}

/** About three years of months. */
const MONTHS_KEPT = 40;

/** Days from a month's computed beginning beyond which no record can touch it. */
const REACH_DAYS = 10;

const FAILURES = {
  'no-sunset': 'the Sun does not set on the evening of',
  'no-sunrise': 'the Sun does not rise, and so does not set, on the day of',
  'no-moonset': 'the Moon does not set after the evening of',
  'not-reached': 'no crescent reaches the wanted class up to the evening of',
} as const;

/** Says that the first crescent of a month cannot be told. */
function refuseCrescent({ search, phaseDay }: MonthOpening): never {
  const last = search?.evenings.at(-1)?.date ?? renderCivilDate(phaseDay);
  const why = `${FAILURES[search?.failure ?? 'not-reached']} \`${last}\``;
  const advice =
    'expected a crescent within five evenings, announce the first night of the month that follows it or record it as seen';
  throw new NoNightError(
    `The first crescent after the conjunction in the night of \`${renderCivilDate(phaseDay)}\` cannot be told at this place: ${why}; ${advice}.`,
  );
}

/** The month that holds the night of a date, by the first dates of months. */
function findMonth(source: BeginningSource, day: DayNumber, firstDayOf: (lunation: number) => DayNumber): number {
  const near = source.lunations.lunationAt(source.line.beginningOf(day).atMs);
  return findHolding(day, near, firstDayOf);
}

/** The calendar by the rule alone, as far as records are held against it. */
function createComputedMonths(source: BeginningSource): ComputedMonths {
  const { run, line, lunations, openingOf } = source;
  const nearDayOf = (lunation: number) => openingOf(lunation).nearDay;
  const namesOf = createMemo(MONTHS_KEPT, (lunation: number) => {
    const days = listDays(line, nearDayOf(lunation), nearDayOf(lunation + 1));
    const anchors = findAnchors(run, line, lunations, days, lunation);
    return computeMonthNames(run, days.length, days.length, anchors, []).map(({ night }) => night);
  });
  return { openingOf, namesOf, lunationOf: (day) => findMonth(source, day, nearDayOf) };
}

/**
 * Where a record moves the beginning of a month; null where it leaves it. A first night, or an announced month, is the
 * beginning. Any other night only keeps its month about it: the month begins by then, and the next one later.
 * @param month The lunation of the month.
 * @param day Where the month would begin without the record.
 */
function moveBeginning(line: NightLine, place: RecordPlace, month: number, day: DayNumber): DayNumber | null {
  const { record, lunation, refused } = place;
  if (refused) return null;
  if (lunation === month) return opensMonth(record) || record.day < day ? record.day : null;
  const isOfMonthBefore = lunation === month - 1 && !opensMonth(record);
  return isOfMonthBefore && record.day >= day ? line.zone.nextDay(record.day) : null;
}

/** Applies the records in order of weight, so that of two that contradict each other the weightier counts. */
function computeBeginning(
  line: NightLine,
  opening: MonthOpening,
  places: readonly RecordPlace[],
  lunation: number,
): MonthBeginning | null {
  let beginning: MonthBeginning | null = opening.firstDay === null ? null : { day: opening.firstDay, record: null };
  for (const place of places) {
    const day = moveBeginning(line, place, lunation, beginning?.day ?? opening.nearDay);
    if (day !== null) beginning = { day, record: place.record };
  }
  return beginning;
}

/**
 * Works out where months begin, by the lunation of their opening phase. Of records that contradict each other the
 * weightier counts, which is the later in the list; records that lie more than three nights from the computed calendar
 * are passed over. `checkRecords` tells of both.
 */
export function createMonthBeginnings(source: BeginningSource): MonthBeginnings {
  const { records, line, openingOf } = source;
  const placeOf = createRecordPlaces(line, createComputedMonths(source));
  const listPlaces = (from: DayNumber, to: DayNumber) =>
    records.filter(({ day }) => day > from - REACH_DAYS && day < to + REACH_DAYS).map(placeOf);
  const findBeginning = createMemo(MONTHS_KEPT, (lunation: number) => {
    const opening = openingOf(lunation);
    return computeBeginning(line, opening, listPlaces(opening.nearDay, opening.nearDay), lunation);
  });
  const requireBeginning = (lunation: number) => findBeginning(lunation) ?? refuseCrescent(openingOf(lunation));
  return {
    placeOf,
    listPlaces,
    findBeginning,
    requireBeginning,
    lunationHolding: (day) => findMonth(source, day, (lunation) => requireBeginning(lunation).day),
  };
}
