import type { MonthRecord, RunNight } from './almanac-types.ts';
import { computeDateParts, type DayNumber, renderCivilDate } from './day-number.ts';
import { computeRun, type FittedName } from './fit.ts';
import type { Lunations } from './lunations.ts';
import { PHASES } from './lunations.ts';
import { createMemo } from './memo.ts';
import { computeMonthName } from './month-name.ts';
import { type AnchorNight, computeMonthNames, findAnchors, listDays, type SeenNight } from './month-nights.ts';
import { createMonthOpenings, type MonthOpening } from './month-openings.ts';
import type { NightLine } from './night-line.ts';
import { NoNightError } from './no-night-error.ts';
import { type ComputedMonths, createRecordPlaces, type RecordPlace } from './record-places.ts';
import { listRecords, opensMonth, type SkyRecord } from './records.ts';
import type { CalendarRules } from './rules.ts';
import { createYearMarkers, type MarkerNight } from './year-markers.ts';

/** A month with the dates and names of its nights, in order. */
export interface MonthSpan {
  readonly record: MonthRecord;
  readonly days: readonly DayNumber[];
  readonly names: readonly FittedName[];
  /** Nights that the month would have if the next one began by the rule. */
  readonly foreseenLength: number;
  /**
   * The first night that a record decided, 0 for the month's first: its name was seen, or the month ends later than
   * the rule foresees; Infinity when none did.
   */
  readonly observedFrom: number;
  readonly lunation: number;
  readonly anchors: readonly AnchorNight[];
  /** Observed nights that count, by date. */
  readonly seen: readonly SeenNight[];
}

/** The beginning of a month as it is, and the record that fixed it, if one did. */
interface MonthBeginning {
  readonly day: DayNumber;
  readonly record: SkyRecord | null;
}

/** The months of one tradition at one place. */
export interface Months {
  /** All named nights in order. */
  readonly run: readonly RunNight[];
  /** The month that holds the night of an existing date. */
  monthOf(day: DayNumber): MonthSpan;
  /** The lunation of that month; a month whose crescent cannot be told counts from about where it must begin. */
  lunationNear(day: DayNumber): number;
  /** How the rule alone opens the month of a lunation. */
  openingOf(lunation: number): MonthOpening;
  /** How the month of a lunation begins; null where no crescent can be told and no record gives it. */
  findBeginning(lunation: number): MonthBeginning | null;
  /** The lunation of a year's first month. */
  firstMonthOf(year: number): number;
  markerOf(year: number): MarkerNight;
  /** The lunation in which the phase falls by which the year of a month is judged. */
  phaseLunationOf(lunation: number): number;
  readonly records: readonly SkyRecord[];
  placeOf(record: SkyRecord): RecordPlace;
}

/** About three years of months. */
const MONTHS_KEPT = 40;

/** First months of years kept: a lifetime. */
const YEARS_KEPT = 100;

/** Days from a month's computed beginning beyond which no record can touch it. */
const REACH_DAYS = 10;

const FAILURES = {
  'no-sunset': 'the Sun does not set on the evening of',
  'no-moonset': 'the Moon does not set after the evening of',
  'not-reached': 'no crescent reaches the wanted class up to the evening of',
} as const;

/** Says that the first crescent of a month cannot be told. */
function refuseCrescent({ search, phaseDay }: MonthOpening): never {
  const last = search?.evenings.at(-1)?.date ?? renderCivilDate(phaseDay);
  const why = `${FAILURES[search?.failure ?? 'not-reached']} \`${last}\``;
  const advice =
    'expected a crescent within five evenings, announce the first night of this month or record it as seen';
  throw new NoNightError(
    `The first crescent after the conjunction of \`${renderCivilDate(phaseDay)}\` cannot be told at this place: ${why}; ${advice}.`,
  );
}

/** The calendar by the rule alone, as far as records are held against it. */
function createComputedMonths(
  run: readonly RunNight[],
  line: NightLine,
  lunations: Lunations,
  openingOf: (lunation: number) => MonthOpening,
): ComputedMonths {
  const namesOf = createMemo(MONTHS_KEPT, (lunation: number) => {
    const days = listDays(line, openingOf(lunation).nearDay, openingOf(lunation + 1).nearDay);
    const anchors = findAnchors(run, line, lunations, days, lunation);
    return computeMonthNames(run, days.length, days.length, anchors, []).map(({ night }) => night);
  });
  const lunationOf = (day: DayNumber) => {
    let lunation = lunations.lunationAt(line.beginningOf(day).atMs);
    while (openingOf(lunation).nearDay > day) lunation -= 1;
    while (openingOf(lunation + 1).nearDay <= day) lunation += 1;
    return lunation;
  };
  return { openingOf, namesOf, lunationOf };
}

/**
 * Works out months and years. A month is known by the lunation of its opening phase; the offset and the records move
 * its nights, but not the phase by which its year is judged. A year bears the Gregorian year of its marker.
 *
 * Of records that contradict each other the weightier counts, which is the later in the list; records that lie more
 * than three nights from the computed calendar are passed over. `checkRecords` tells of both.
 * @param line The nights of the place.
 * @param lunations The phases of the Moon.
 * @throws RangeError for a record of a night that the calendar does not have; from the calls, for months whose first
 *   crescent cannot be told and that no record gives, and for years whose star does not come back.
 */
export function createMonths(rules: CalendarRules, line: NightLine, lunations: Lunations): Months {
  const run = computeRun(rules.groups);
  const records = listRecords(rules, run);
  const openingOf = createMonthOpenings(rules, line, lunations);
  const placeOf = createRecordPlaces(line, createComputedMonths(run, line, lunations, openingOf));
  const markerOf = createYearMarkers(rules, line);
  const recordsAbout = (from: DayNumber, to: DayNumber) =>
    records.filter(({ day }) => day > from - REACH_DAYS && day < to + REACH_DAYS);

  const findBeginning = createMemo(MONTHS_KEPT, (lunation: number): MonthBeginning | null => {
    const opening = openingOf(lunation);
    const fixed = recordsAbout(opening.nearDay, opening.nearDay)
      .map((record) => placeOf(record))
      .findLast(({ opens }) => opens?.lunation === lunation);
    if (fixed?.opens) return { day: fixed.opens.day, record: fixed.record };
    return opening.firstDay === null ? null : { day: opening.firstDay, record: null };
  });
  const beginningOf = (lunation: number) => findBeginning(lunation) ?? refuseCrescent(openingOf(lunation));

  // A month that opens with the full Moon meets the new Moon and the first quarter in the next lunation.
  const { phase } = rules.yearBegins;
  const isLater = rules.monthBegins.at === 'full-moon' && PHASES.indexOf(phase) < PHASES.indexOf('full-moon');
  const later = isLater ? 1 : 0;
  const firstMonthOf = createMemo(YEARS_KEPT, (year: number) => {
    // Nights follow without gap: a phase falls on the marker's night or later when it is not before that night begins.
    const markerMs = line.beginningOf(markerOf(year).day).atMs;
    return lunations.firstFrom(phase, markerMs) - later;
  });
  const yearOf = (lunation: number) => {
    let { year } = computeDateParts(openingOf(lunation).nearDay);
    while (firstMonthOf(year) > lunation) year -= 1;
    while (firstMonthOf(year + 1) <= lunation) year += 1;
    return year;
  };

  const listSeen = (days: readonly DayNumber[]): readonly SeenNight[] => {
    const byIndex = new Map<number, SeenNight>();
    for (const record of recordsAbout(days[0] ?? 0, days.at(-1) ?? 0)) {
      const index = days.indexOf(record.day);
      if (opensMonth(record) || record.kind === 'announced' || index < 0 || placeOf(record).refused) continue;
      byIndex.set(index, { observation: record.observation, night: record.night, index });
    }
    return [...byIndex.values()].sort((a, b) => a.index - b.index);
  };

  const monthOfLunation = createMemo(MONTHS_KEPT, (lunation: number): MonthSpan => {
    const beginning = beginningOf(lunation);
    const end = beginningOf(lunation + 1).day;
    const foreseenEnd = openingOf(lunation + 1).firstDay ?? end;
    const days = listDays(line, beginning.day, end);
    const foreseen = end === foreseenEnd ? days : listDays(line, beginning.day, foreseenEnd);
    const anchors = findAnchors(run, line, lunations, foreseen, lunation);
    const seen = records.length > 0 ? listSeen(days) : [];
    const names = computeMonthNames(run, foreseen.length, days.length, anchors, seen);
    const year = yearOf(lunation);
    const number = lunation - firstMonthOf(year) + 1;
    const { month, intercalary } = computeMonthName(rules, number, firstMonthOf(year + 1) - firstMonthOf(year));
    const { name, say, meaning } = month;
    const words = { name, ...(say !== undefined && { say }), ...(meaning !== undefined && { meaning }) };
    const firstDate = renderCivilDate(beginning.day);
    const record = { ...words, number, year, firstDate, length: days.length, intercalary };
    const foreseenLength = foreseen.length;
    const lateFrom = days.length > foreseenLength ? foreseenLength : Number.POSITIVE_INFINITY;
    const observedFrom = beginning.record ? 0 : Math.min(seen[0]?.index ?? lateFrom, lateFrom);
    return { record, days, names, foreseenLength, observedFrom, lunation, anchors, seen };
  });
  const findLunation = (day: DayNumber, dayOf: (lunation: number) => DayNumber) => {
    let lunation = lunations.lunationAt(line.beginningOf(day).atMs);
    while (dayOf(lunation) > day) lunation -= 1;
    while (dayOf(lunation + 1) <= day) lunation += 1;
    return lunation;
  };
  return {
    run,
    monthOf: (day) => monthOfLunation(findLunation(day, (lunation) => beginningOf(lunation).day)),
    lunationNear: (day) => findLunation(day, (lunation) => findBeginning(lunation)?.day ?? openingOf(lunation).nearDay),
    openingOf,
    findBeginning,
    firstMonthOf,
    markerOf,
    phaseLunationOf: (lunation) => lunation + later,
    records,
    placeOf,
  };
}
