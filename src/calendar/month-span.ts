import type { MonthRecord, RunNight } from './almanac-types.ts';
import type { CalendarYears } from './calendar-years.ts';
import { type DayNumber, renderCivilDate } from './day-number.ts';
import type { FittedName } from './fit.ts';
import type { Lunations } from './lunations.ts';
import type { MonthBeginning, MonthBeginnings } from './month-beginnings.ts';
import { computeMonthName } from './month-name.ts';
import { type AnchorNight, computeMonthNames, findAnchors, listDays, type SeenNight } from './month-nights.ts';
import type { MonthOpening } from './month-openings.ts';
import type { NightLine } from './night-line.ts';
import { opensMonth } from './records.ts';
import type { CalendarRules } from './rules.ts';

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

/** What a month is worked out from. */
export interface MonthSource {
  readonly rules: CalendarRules;
  /** All named nights in order. */
  readonly run: readonly RunNight[];
  readonly line: NightLine;
  readonly lunations: Lunations;
  /** How the rule alone opens the month of a lunation. */
  readonly openingOf: (lunation: number) => MonthOpening;
  readonly beginnings: MonthBeginnings;
  readonly years: CalendarYears;
}

/** The dates of a month as it is, and as it would be if the next one began by the rule. */
function listMonthDays({ line, openingOf, beginnings }: MonthSource, first: DayNumber, lunation: number) {
  const end = beginnings.requireBeginning(lunation + 1).day;
  const foreseenEnd = openingOf(lunation + 1).firstDay ?? end;
  const days = listDays(line, first, end);
  return { days, foreseen: end === foreseenEnd ? days : listDays(line, first, foreseenEnd) };
}

/** What was seen within a month, but for first nights: those decide its beginning alone. */
function listSeen(beginnings: MonthBeginnings, lunation: number, days: readonly DayNumber[]): readonly SeenNight[] {
  const byIndex = new Map<number, SeenNight>();
  for (const place of beginnings.listPlaces(days[0] ?? 0, days.at(-1) ?? 0)) {
    const { record, refused } = place;
    const index = days.indexOf(record.day);
    if (refused || place.lunation !== lunation || index < 0) continue;
    if (record.kind === 'announced' || opensMonth(record)) continue;
    byIndex.set(index, { observation: record.observation, night: record.night, index });
  }
  return [...byIndex.values()].sort((a, b) => a.index - b.index);
}

/** The month's name and its place in the year, the dates left out. */
function nameMonth({ rules, years }: MonthSource, lunation: number): Omit<MonthRecord, 'firstDate' | 'length'> {
  const { year, number, monthsInYear } = years.placeOf(lunation);
  const { month, intercalary } = computeMonthName(rules, number, monthsInYear);
  const { name, say, meaning } = month;
  return {
    name,
    ...(say !== undefined && { say }),
    ...(meaning !== undefined && { meaning }),
    number,
    year,
    intercalary,
  };
}

function findObservedFrom(
  beginning: MonthBeginning,
  seen: readonly SeenNight[],
  length: number,
  foreseenLength: number,
): number {
  if (beginning.record) return 0;
  const lateFrom = length > foreseenLength ? foreseenLength : Number.POSITIVE_INFINITY;
  return Math.min(seen[0]?.index ?? lateFrom, lateFrom);
}

/**
 * The month of a lunation.
 * @throws NoNightError where its crescent, or the next one's, cannot be told and no record gives it.
 */
export function computeMonthSpan(source: MonthSource, lunation: number): MonthSpan {
  const { run, line, lunations, beginnings } = source;
  const beginning = beginnings.requireBeginning(lunation);
  const { days, foreseen } = listMonthDays(source, beginning.day, lunation);
  const anchors = findAnchors(run, line, lunations, foreseen, lunation);
  const seen = listSeen(beginnings, lunation, days);
  const { intercalary, ...named } = nameMonth(source, lunation);
  return {
    record: { ...named, firstDate: renderCivilDate(beginning.day), length: days.length, intercalary },
    days,
    names: computeMonthNames(run, foreseen.length, days.length, anchors, seen),
    foreseenLength: foreseen.length,
    observedFrom: findObservedFrom(beginning, seen, days.length, foreseen.length),
    lunation,
    anchors,
    seen,
  };
}
