import {
  AstroTime,
  Body,
  Equator,
  Horizon,
  Illumination,
  MoonPhase,
  Observer,
  RotateVector,
  Rotation_EQJ_EQD,
  Rotation_HOR_EQD,
  RotationAxis,
  SearchAltitude,
  SearchHourAngle,
  SearchMoonPhase,
  SearchRiseSet,
  SearchSunLongitude,
  Vector,
} from 'astronomy-engine';
import type { MoonView } from './almanac-types.ts';
import { dayNumberOf, MS_PER_DAY } from './day-number.ts';
import { computeTurnDegrees, type Vector3 } from './direction.ts';
import type { InstantMs, PhaseName, Place, YearMarker } from './rules.ts';

/**
 * The only door to astronomy-engine 2.1.19, whose stated accuracy is one arc minute. Instants go in and come out as
 * whole milliseconds; what is not found within the limit is null; whatever the engine throws becomes an Error.
 */

/** 2000-01-01T12:00Z, from which the engine counts days. */
const ENGINE_EPOCH_MS = 946_728_000_000;

/** Degrees that the Moon is ahead of the Sun in ecliptic longitude at each principal phase: their definition. */
const PHASE_LONGITUDE_DEGREES: Readonly<Record<PhaseName, number>> = {
  'new-moon': 0,
  'first-quarter': 90,
  'full-moon': 180,
  'last-quarter': 270,
};

/** The months of the equinoxes and solstices, and the Sun's apparent longitude at each: their definition. */
const SEASONS = {
  march: { month: 3, longitudeDegrees: 0 },
  june: { month: 6, longitudeDegrees: 90 },
  september: { month: 9, longitudeDegrees: 180 },
  december: { month: 12, longitudeDegrees: 270 },
} as const;

const BODIES = { sun: Body.Sun, moon: Body.Moon } as const;

/** The Sun or the Moon. */
type Luminary = keyof typeof BODIES;

/** The Moon as it stands, without the question whether it is up that night. */
export type MoonPose = Omit<MoonView, 'up'>;

/** How much of the Moon is lit, seen from the centre of the Earth. */
interface Lighting {
  /** 0 to 1. */
  readonly litFraction: number;
  /** Angle Sun, Moon, Earth: 0 at full moon to 180 at new moon. */
  readonly phaseAngleDegrees: number;
  /** True from new moon to full moon. */
  readonly waxing: boolean;
}

function engineTime(instantMs: InstantMs): AstroTime {
  return new AstroTime((instantMs - ENGINE_EPOCH_MS) / MS_PER_DAY);
}

function instantOf(time: AstroTime): InstantMs {
  return Math.round(time.ut * MS_PER_DAY) + ENGINE_EPOCH_MS;
}

function engineObserver(place: Place): Observer {
  return new Observer(place.latitudeDegrees, place.longitudeDegrees, place.elevationMetres);
}

/** Runs a computation of the engine, which throws bare strings. */
function ask<Value>(what: string, compute: () => Value): Value {
  try {
    return compute();
  } catch (thrown) {
    if (thrown instanceof Error) throw thrown;
    throw new Error(`The sky could not be computed (${what}): ${String(thrown)}`, { cause: thrown });
  }
}

function search(what: string, compute: () => AstroTime | null): InstantMs | null {
  const time = ask(what, compute);
  return time ? instantOf(time) : null;
}

/**
 * The first instant of a phase at or after `fromMs`. The engine counts from the Sun's geometric longitude; almanacs use
 * the apparent one (20.5 arc seconds less), and print phases about 40 seconds earlier.
 * @param limitDays How far to look, more than 0; the end is included.
 * @returns null when the phase does not come within the limit.
 */
export function findPhase(phase: PhaseName, fromMs: InstantMs, limitDays: number): InstantMs | null {
  return search(phase, () => SearchMoonPhase(PHASE_LONGITUDE_DEGREES[phase], engineTime(fromMs), limitDays));
}

/**
 * The first rise or set after `fromMs`: the upper limb on a level horizon, with the refraction of standard air at
 * the place's elevation (34 arc minutes at sea level). The dip of the horizon below a hill is left out.
 * @param limitDays How far to look, more than 0.
 * @returns null when it does not come within the limit, as on a polar day.
 */
export function findRiseSet(
  body: Luminary,
  event: 'rise' | 'set',
  place: Place,
  fromMs: InstantMs,
  limitDays: number,
): InstantMs | null {
  const direction = event === 'rise' ? 1 : -1;
  return search(`${body} ${event}`, () =>
    SearchRiseSet(BODIES[body], engineObserver(place), direction, engineTime(fromMs), limitDays),
  );
}

/**
 * The first instant after `fromMs` at which the Sun's centre sinks through an altitude; -6 ends civil twilight.
 * @param altitudeDegrees Airless altitude, -90 to 90.
 * @param limitDays How far to look, more than 0.
 * @returns null when the Sun does not sink so far within the limit.
 */
export function findSunSinking(
  altitudeDegrees: number,
  place: Place,
  fromMs: InstantMs,
  limitDays: number,
): InstantMs | null {
  return search('Sun altitude', () =>
    SearchAltitude(Body.Sun, engineObserver(place), -1, engineTime(fromMs), limitDays, altitudeDegrees),
  );
}

/**
 * The instant of an equinox or solstice.
 * @param year Gregorian year in universal time; near our own era, where the seasons begin from the 10th to the 30th.
 */
export function computeSeason(year: number, month: Exclude<YearMarker, { kind: 'date' }>['month']): InstantMs {
  const season = SEASONS[month];
  const fromMs = dayNumberOf(year, season.month, 10) * MS_PER_DAY;
  const found = search(month, () => SearchSunLongitude(season.longitudeDegrees, engineTime(fromMs), 20));
  if (found === null) throw new Error(`No equinox or solstice was found in ${month} ${year}.`);
  return found;
}

/** How much of the Moon is lit at an instant. */
export function computeLighting(atMs: InstantMs): Lighting {
  return ask('illumination', () => {
    const time = engineTime(atMs);
    const light = Illumination(Body.Moon, time);
    const waxing = MoonPhase(time) < 180;
    return { litFraction: light.phase_fraction, phaseAngleDegrees: light.phase_angle, waxing };
  });
}

/**
 * The Moon's upper transit of the meridian next to an instant: when it stands highest, but for some minutes.
 * @param direction `after` or `before` the instant.
 */
export function computeMoonTransit(place: Place, fromMs: InstantMs, direction: 'after' | 'before'): InstantMs {
  return ask('Moon transit', () => {
    const sense = direction === 'after' ? 1 : -1;
    return instantOf(SearchHourAngle(Body.Moon, engineObserver(place), 0, engineTime(fromMs), sense).time);
  });
}

function components(vector: Vector): Vector3 {
  return [vector.x, vector.y, vector.z];
}

/**
 * The Moon in the sky of a place. Directions are counted in one frame (equator and equinox of date): the Moon's and
 * the Sun's as seen from the place, the zenith, and the Moon's axis after the IAU report of 2015.
 */
export function computeMoonPose(place: Place, atMs: InstantMs): MoonPose {
  return ask('Moon in the sky', () => {
    const time = engineTime(atMs);
    const observer = engineObserver(place);
    const moon = Equator(Body.Moon, time, observer, true, true);
    const sun = Equator(Body.Sun, time, observer, true, true);
    const horizon = Horizon(time, observer, moon.ra, moon.dec, 'normal');
    const zenith = components(RotateVector(Rotation_HOR_EQD(time, observer), new Vector(0, 0, 1, time)));
    const axis = components(RotateVector(Rotation_EQJ_EQD(time), RotationAxis(Body.Moon, time).north));
    const { litFraction, waxing } = computeLighting(atMs);
    return {
      atMs,
      altitudeDegrees: horizon.altitude,
      azimuthDegrees: horizon.azimuth,
      litFraction,
      brightLimbDegrees: computeTurnDegrees(components(moon.vec), zenith, components(sun.vec)),
      northPoleDegrees: computeTurnDegrees(components(moon.vec), zenith, axis),
      waxing,
    };
  });
}
