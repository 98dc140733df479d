import type { Almanac, NightRecord } from './almanac-types.ts';
import { type DayNumber, MS_PER_DAY, parseCivilDate, renderCivilDate } from './day-number.ts';
import { createExplainer } from './explain.ts';
import { createLunations } from './lunations.ts';
import { createMemo } from './memo.ts';
import { createMonths, type Months } from './months.ts';
import { computeMoonBestSeen, computeMoonHighest, computeNightSky } from './moon-seen.ts';
import { createNightLine, type NightLine } from './night-line.ts';
import type { CalendarRules, CivilDate, InstantMs, Place } from './rules.ts';

const FIRST_DATE = '1800-01-01';
const LAST_DATE = '2200-12-31';
const FIRST_DAY = parseCivilDate(FIRST_DATE);
const LAST_DAY = parseCivilDate(LAST_DATE);

/** About two years of nights: a week, a term or a year is answered from memory, a century does not pile up. */
const NIGHTS_KEPT = 800;

function requireNumberWithin(what: string, value: number, least: number, most: number): void {
  if (value >= least && value <= most) return;
  throw new RangeError(`Unexpected ${what} \`${value}\`, expected a number from ${least} to ${most}.`);
}

/** A place or rules that come this far without the content checks must not give wrong nights in silence. */
function requireUsable(rules: CalendarRules, place: Place): void {
  requireNumberWithin('latitude', place.latitudeDegrees, -90, 90);
  requireNumberWithin('longitude', place.longitudeDegrees, -180, 180);
  requireNumberWithin('elevation', place.elevationMetres, -500, 9000);
  requireNumberWithin('count of month names', rules.months.length, 12, 13);
  const names = rules.groups.reduce((sum, { nights }) => sum + nights.length, 0);
  requireNumberWithin('count of night names', names, 1, Number.MAX_SAFE_INTEGER);
  const { offset } = rules.monthBegins;
  if (!Number.isInteger(offset)) throw new RangeError(`Unexpected offset \`${offset}\`, expected whole nights.`);
  const marker = rules.yearBegins.onOrAfter;
  // 2000 is a leap year, so that 29 February passes.
  if (marker.kind === 'date') parseCivilDate(`2000-${marker.monthDay}`);
}

/** An instant from three days before the stated range to three days after: a school's day reaches into nights beside it. */
function requireInstant(instantMs: InstantMs): InstantMs {
  const day = instantMs / MS_PER_DAY;
  if (day > FIRST_DAY - 3 && day < LAST_DAY + 4) return instantMs;
  throw new RangeError(
    `Unexpected instant \`${instantMs}\`, expected milliseconds from ${FIRST_DATE} to ${LAST_DATE}.`,
  );
}

/** A day that the almanac answers for. */
function requireDay(line: NightLine, day: DayNumber): DayNumber {
  const date = renderCivilDate(day);
  if (day < FIRST_DAY || day > LAST_DAY) {
    const expected = `expected one from \`${FIRST_DATE}\` to \`${LAST_DATE}\``;
    throw new RangeError(`Unexpected date \`${date}\`, ${expected}, use a date in that range.`);
  }
  if (line.zone.findStartOfDay(day) === null) {
    const expected = 'expected a date that the clocks of this place did not leave out';
    throw new RangeError(`Unexpected date \`${date}\`, ${expected}, use the day before or after.`);
  }
  return day;
}

function computeNight(line: NightLine, months: Months, day: DayNumber): NightRecord {
  const beginning = line.beginningOf(day);
  const endsMs = line.beginningOf(line.zone.nextDay(day)).atMs;
  const date = renderCivilDate(day);
  // Only where clocks run about twelve hours off the Sun and then change can two dates claim one solar noon.
  if (endsMs <= beginning.atMs) throw new RangeError(`The time zone of this place has no night of its own on ${date}.`);
  const month = months.monthOf(day);
  const nightOfMonth = month.days.indexOf(day) + 1;
  const fitted = month.names[nightOfMonth - 1];
  if (fitted === undefined) throw new Error(`Night ${nightOfMonth} of ${month.record.firstDate} has no name.`);
  const { night, repeat } = fitted;
  const basis = nightOfMonth > month.observedFrom ? 'observed' : 'computed';
  const { atMs: beginsMs, with: beginsWith, sunStays } = beginning;
  const stretch = { beginsMs, endsMs, beginsWith, ...(sunStays !== undefined && { sunStays }) };
  return { date, ...stretch, night, repeat, nightOfMonth, month: month.record, basis };
}

function* listNights(
  line: NightLine,
  nightOf: (day: DayNumber) => NightRecord,
  from: DayNumber,
  to: DayNumber,
): Generator<NightRecord> {
  const isLeftOut = line.zone.findStartOfDay(from) === null;
  for (let day = isLeftOut ? line.zone.nextDay(from) : from; day <= to; day = line.zone.nextDay(day)) {
    yield nightOf(day);
  }
}

/**
 * Makes the computed calendar of one tradition at one place, for 1800-01-01 to 2200-12-31. `nightAt` also answers for a
 * few nights beside that range: at sunrise of its first day the night before it goes on. Answers are kept, but not
 * without limit. `skyOf`, `moonBestSeen` and `moonHighest` go by the record's date; `nights` yields nothing when `from`
 * is later than `to`.
 * @throws RangeError when the place or the rules cannot be computed with, such as a time zone that is not known.
 */
export function createAlmanac(rules: CalendarRules, place: Place): Almanac {
  requireUsable(rules, place);
  const line = createNightLine(rules.dayBegins, place);
  const lunations = createLunations();
  const months = createMonths(rules, line, lunations);
  const nightOf = createMemo(NIGHTS_KEPT, (day: DayNumber) => computeNight(line, months, day));
  const explain = createExplainer({ rules, line, lunations, months });
  const ofRecord = <Value>(compute: (day: DayNumber) => Value) => {
    const remembered = createMemo(NIGHTS_KEPT, compute);
    return (record: NightRecord) => remembered(parseCivilDate(record.date));
  };
  const requireDate = (date: CivilDate) => requireDay(line, parseCivilDate(date));
  const requireRangeEnd = (date: CivilDate) => {
    const day = parseCivilDate(date);
    // A date that the place left out may end a range; one outside the almanac may not.
    return line.zone.findStartOfDay(day) === null ? day : requireDay(line, day);
  };
  return {
    rules,
    place,
    run: months.run,
    nightOn: (date) => nightOf(requireDate(date)),
    nightAt: (instantMs) => nightOf(line.dayHolding(requireInstant(instantMs))),
    nights: (from, to) => listNights(line, nightOf, requireRangeEnd(from), requireRangeEnd(to)),
    nightsOfMonth: (date) => months.monthOf(requireDate(date)).days.map(nightOf),
    explain: (date) => explain(nightOf(requireDate(date))),
    skyOf: ofRecord((day) => computeNightSky(line, lunations, place, day, nightOf(day))),
    moonBestSeen: ofRecord((day) => computeMoonBestSeen(line, place, day)),
    moonHighest: ofRecord((day) => computeMoonHighest(line, place, day)),
  };
}
