import { CIVIL_TWILIGHT_DEGREES, findLongest, listUp, type Stretch } from './above-horizon.ts';
import type { MoonView, NightSky } from './almanac-types.ts';
import { type DayNumber, MS_PER_DAY } from './day-number.ts';
import type { Lunations } from './lunations.ts';
import { PHASES } from './lunations.ts';
import type { NightLine } from './night-line.ts';
import type { InstantMs, Place } from './rules.ts';
import {
  computeLighting,
  computeMoonPose,
  computeMoonTransit,
  findRiseSet,
  findSunSinking,
  type MoonPose,
} from './sky.ts';

/** The night of a date, from its beginning until the next one's. */
function computeNight(line: NightLine, day: DayNumber): Stretch {
  return { fromMs: line.beginningOf(day).atMs, untilMs: line.beginningOf(line.zone.nextDay(day)).atMs };
}

/** Whether midnight stands in for the sunset or sunrise with which the night of a date should begin or end. */
function isOddNight(line: NightLine, day: DayNumber): boolean {
  return [day, line.zone.nextDay(day)].some((each) => line.beginningOf(each).sunStays !== undefined);
}

/**
 * The dark of an odd night: its sunset and its sunrise, and for what is missing the ends of the night. It is the whole
 * night where the Sun stays down, and also where it stays up or comes up for half a year before the night begins: there
 * is no dark then, but there is a night.
 */
function computeOddDark(line: NightLine, day: DayNumber): Stretch {
  const night = computeNight(line, day);
  const fromMs = Math.max(line.sunsetOf(day) ?? night.fromMs, night.fromMs);
  const untilMs = Math.min(line.sunriseAfter(day) ?? night.untilMs, night.untilMs);
  return fromMs < untilMs ? { fromMs, untilMs } : night;
}

/** The dark of a date: sunset to sunrise. In a night from midnight to midnight by the rule, noons stand in for either. */
function computeDark(line: NightLine, day: DayNumber): Stretch {
  if (isOddNight(line, day)) return computeOddDark(line, day);
  const noonMs = line.solarNoonOf(day);
  return { fromMs: line.sunsetOf(day) ?? noonMs, untilMs: line.sunriseAfter(day) ?? noonMs + MS_PER_DAY };
}

function computeMiddle({ fromMs, untilMs }: Stretch): InstantMs {
  return Math.round((fromMs + untilMs) / 2);
}

/** The transit nearest to an instant. Transits are more than a day apart, so one within half a day is the nearest. */
function computeNearestTransit(place: Place, atMs: InstantMs): InstantMs {
  const first = computeMoonTransit(place, atMs - MS_PER_DAY / 2, 'after');
  if (first - atMs <= MS_PER_DAY / 2) return first;
  const before = computeMoonTransit(place, atMs - MS_PER_DAY / 2, 'before');
  return atMs - before < first - atMs ? before : first;
}

/**
 * Up to this latitude the middle of the dark strays less than half an hour from mean solar midnight: 17 minutes for the
 * equation of time, a few for the change of sunset and sunrise from day to day.
 */
const EVEN_NIGHTS_DEGREES = 60;
const MIDDLE_STRAY_MS = MS_PER_DAY / 48;

/** Whether days begin at midnight by the rule; the evening and the morning after are then two nights. */
function isCivilNight(line: NightLine, day: DayNumber): boolean {
  const { with: beginsWith, sunStays } = line.beginningOf(day);
  return beginsWith === 'midnight' && sunStays === undefined;
}

/** A transit moved into a night that it lies beside: the one before or after it, or else where the Moon is nearest to it. */
function moveIntoNight(place: Place, { fromMs, untilMs }: Stretch, transitMs: InstantMs): InstantMs {
  if (fromMs <= transitMs && transitMs < untilMs) return transitMs;
  const other =
    transitMs < fromMs ? computeMoonTransit(place, fromMs, 'after') : computeMoonTransit(place, untilMs, 'before');
  if (fromMs <= other && other < untilMs) return other;
  return transitMs < fromMs ? fromMs : untilMs - 1;
}

/** The transit nearest the middle of the dark; looks for sunset and sunrise only where solar midnight does not tell. */
function computeNightTransit(line: NightLine, place: Place, day: DayNumber): InstantMs {
  const isFarFromPoles = Math.abs(place.latitudeDegrees) <= EVEN_NIGHTS_DEGREES;
  if (isFarFromPoles) {
    const midnightMs = line.solarNoonOf(day) + MS_PER_DAY / 2;
    const nearest = computeNearestTransit(place, midnightMs);
    if (Math.abs(nearest - midnightMs) < MS_PER_DAY / 2 - MIDDLE_STRAY_MS) return nearest;
  }
  const nearest = computeNearestTransit(place, computeMiddle(computeDark(line, day)));
  // Nearer to the equator only a Moon near the Sun has its transit outside the night, and no time is told of that.
  return isFarFromPoles || isCivilNight(line, day) ? nearest : moveIntoNight(place, computeNight(line, day), nearest);
}

/** Above this altitude (degrees, refracted, centre) the Moon is up beyond doubt: its limb and the air make under 1. */
const SURELY_UP_DEGREES = 2;

/** Whether the Moon is up at some time of the dark; looks for its rise and set only when one glance does not tell. */
function isUpInDark(place: Place, dark: Stretch, pose: MoonPose): boolean {
  const isSurelyUp = (seen: MoonPose) => seen.altitudeDegrees > SURELY_UP_DEGREES;
  if (isSurelyUp(pose) && dark.fromMs <= pose.atMs && pose.atMs < dark.untilMs) return true;
  return isSurelyUp(computeMoonPose(place, dark.fromMs)) || listUp('moon', place, dark).length > 0;
}

/**
 * The Moon at its upper transit nearest the middle of the dark (between sunset and sunrise). Beyond 60 degrees of
 * latitude it is the highest of the night, unless days begin at midnight.
 * @param day An existing date.
 */
export function computeMoonHighest(line: NightLine, place: Place, day: DayNumber): MoonView {
  const pose = computeMoonPose(place, computeNightTransit(line, place, day));
  return {
    ...pose,
    // A drawing of the month asks for every night's Moon and never for this, which takes more searches.
    get up() {
      return isUpInDark(place, computeDark(line, day), pose);
    },
  };
}

/**
 * The Moon when it is best seen between sunset and sunrise: at the end of civil twilight if it is up then; else in the
 * middle of its longest stretch above the horizon; else, never being up in the dark, as in `computeMoonHighest`. Unless
 * days begin at midnight, that is an instant of the night.
 * @param day An existing date.
 */
export function computeMoonBestSeen(line: NightLine, place: Place, day: DayNumber): MoonView {
  const dark = computeDark(line, day);
  const stretches = listUp('moon', place, dark);
  const longest = findLongest(stretches);
  if (longest === null) return computeMoonHighest(line, place, day);
  const darkDays = (dark.untilMs - dark.fromMs) / MS_PER_DAY;
  const duskMs = findSunSinking(CIVIL_TWILIGHT_DEGREES, place, dark.fromMs, darkDays);
  const isUpAtDusk = duskMs !== null && stretches.some((up) => up.fromMs <= duskMs && duskMs < up.untilMs);
  return { ...computeMoonPose(place, isUpAtDusk ? duskMs : computeMiddle(longest)), up: true };
}

/** The principal phase within a stretch; there is one at most, phases being more than six days apart. */
export function findPhaseWithin(lunations: Lunations, { fromMs, untilMs }: Stretch): NightSky['phase'] {
  const lunation = lunations.lunationAt(untilMs - 1);
  for (const name of PHASES) {
    const atMs = lunations.phaseInstant(lunation, name);
    if (fromMs <= atMs && atMs < untilMs) return { name, atMs };
  }
  return null;
}

/**
 * The sky of the night of a date.
 * @param day An existing date.
 * @param night The night's beginning and end.
 */
export function computeNightSky(
  line: NightLine,
  lunations: Lunations,
  place: Place,
  day: DayNumber,
  night: { readonly beginsMs: InstantMs; readonly endsMs: InstantMs },
): NightSky {
  const { beginsMs, endsMs } = night;
  const lastConjunctionMs = lunations.phaseInstant(lunations.lunationAt(beginsMs), 'new-moon');
  const findWithin = (event: 'rise' | 'set') => {
    const foundMs = findRiseSet('moon', event, place, beginsMs, (endsMs - beginsMs) / MS_PER_DAY);
    return foundMs !== null && foundMs < endsMs ? foundMs : null;
  };
  return {
    moonAgeDays: (beginsMs - lastConjunctionMs) / MS_PER_DAY,
    // Not every question about a night is about its light.
    get illuminatedFraction() {
      return computeLighting(beginsMs).litFraction;
    },
    phase: findPhaseWithin(lunations, { fromMs: beginsMs, untilMs: endsMs }),
    sunsetMs: line.sunsetOf(day),
    get sunriseMs() {
      return line.sunriseAfter(day);
    },
    moonriseMs: findWithin('rise'),
    moonsetMs: findWithin('set'),
  };
}
