import { type CivilZone, requireCivilZone } from './civil.ts';
import { type DayNumber, MS_PER_DAY } from './day-number.ts';
import { createMemo } from './memo.ts';
import type { DayBegins, InstantMs, Place, SunStays } from './rules.ts';
import { findRiseSet, isUp } from './sky.ts';

/** Where a night begins, and with what. */
interface NightBeginning {
  readonly atMs: InstantMs;
  readonly with: DayBegins;
  /** Only where midnight stands in for sunset or sunrise. */
  readonly sunStays?: SunStays;
}

/** The nights of a place in a row, without gap: each ends where that of the next existing date begins. */
export interface NightLine {
  readonly zone: CivilZone;
  readonly place: Place;
  /** Where the night of an existing date begins. */
  beginningOf(day: DayNumber): NightBeginning;
  /** The date of the night that holds an instant. */
  dayHolding(instantMs: InstantMs): DayNumber;
  /** Mean solar noon of an existing date: the one nearest to 12 hours after its start. */
  solarNoonOf(day: DayNumber): InstantMs;
  /** Sunset of an existing date, after civil midnight in some places; null where the Sun stays up, or down. */
  sunsetOf(day: DayNumber): InstantMs | null;
  /** The sunrise after the night of an existing date; null where the Sun stays down, or up. */
  sunriseAfter(day: DayNumber): InstantMs | null;
  /** What the Sun does on an existing date without sunset. */
  sunStaysOn(day: DayNumber): SunStays;
}

/**
 * The Sun's true noon strays up to 16.5 minutes from the mean one (equation of time: Meeus, Astronomical Algorithms,
 * chapter 28). Where the day is only minutes long, its rise and set must still fall on the right side of noon.
 */
const NOON_STRAY_MS = 20 * 60_000;

const MS_PER_DEGREE = MS_PER_DAY / 360;

/** About three years of nights. */
const NIGHTS_KEPT = 1_200;

/** Sunsets and sunrises by the count of mean solar noons; each search covers one solar day, so none is counted twice. */
function createSolarDays(place: Place) {
  const noonMs = (noon: number) => noon * MS_PER_DAY + MS_PER_DAY / 2 - place.longitudeDegrees * MS_PER_DEGREE;
  return {
    noonMs,
    noonNearest: (instantMs: InstantMs) => Math.round((instantMs - noonMs(0)) / MS_PER_DAY),
    sunsetAfterNoon: createMemo(NIGHTS_KEPT, (noon: number) =>
      findRiseSet('sun', 'set', place, noonMs(noon) - NOON_STRAY_MS, 1),
    ),
    sunriseAfterNoon: createMemo(NIGHTS_KEPT, (noon: number) =>
      findRiseSet('sun', 'rise', place, noonMs(noon) + NOON_STRAY_MS, 1),
    ),
    // Midnight tells: on the last day of the polar night the Sun may come up just before the search for sunset ends.
    staysAfterNoon: (noon: number): SunStays => (isUp('sun', place, noonMs(noon) + MS_PER_DAY / 2) ? 'up' : 'down'),
  };
}

function requireStartOfDay(zone: CivilZone, day: DayNumber): InstantMs {
  const startMs = zone.findStartOfDay(day);
  if (startMs === null) throw new RangeError(`Day ${day} from 1970-01-01 was left out at this place.`);
  return startMs;
}

/**
 * Lays out the nights of a place. The night of date D begins
 * - `midnight`: with the start of D;
 * - `sunset`: with the sunset after D's solar noon, or, if there is none, with the midnight that ends D;
 * - `sunrise`: with the sunrise before D's solar noon, or, if there is none, with the midnight that opens D.
 * @throws RangeError for a time zone that is not known.
 */
export function createNightLine(dayBegins: DayBegins, place: Place): NightLine {
  const zone = requireCivilZone(place.timeZone);
  const sun = createSolarDays(place);
  const noonOf = (day: DayNumber) => sun.noonNearest(requireStartOfDay(zone, day) + MS_PER_DAY / 2);
  const beginningOf = createMemo(NIGHTS_KEPT, (day: DayNumber): NightBeginning => {
    if (dayBegins === 'midnight') return { atMs: requireStartOfDay(zone, day), with: 'midnight' };
    const isSunset = dayBegins === 'sunset';
    const noon = isSunset ? noonOf(day) : noonOf(day) - 1;
    const sunMs = isSunset ? sun.sunsetAfterNoon(noon) : sun.sunriseAfterNoon(noon);
    if (sunMs !== null) return { atMs: sunMs, with: dayBegins };
    const midnightMs = requireStartOfDay(zone, isSunset ? zone.nextDay(day) : day);
    return { atMs: midnightMs, with: 'midnight', sunStays: sun.staysAfterNoon(noon) };
  });
  return {
    zone,
    place,
    beginningOf,
    dayHolding: (instantMs) => {
      let day = zone.dayAt(instantMs);
      while (beginningOf(day).atMs > instantMs) day = zone.previousDay(day);
      for (let next = zone.nextDay(day); beginningOf(next).atMs <= instantMs; next = zone.nextDay(day)) day = next;
      return day;
    },
    solarNoonOf: (day) => sun.noonMs(noonOf(day)),
    sunsetOf: (day) => sun.sunsetAfterNoon(noonOf(day)),
    sunriseAfter: (day) => sun.sunriseAfterNoon(noonOf(day)),
    sunStaysOn: (day) => sun.staysAfterNoon(noonOf(day)),
  };
}
