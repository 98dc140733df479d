import {
  AngleBetween,
  AstroTime,
  Atmosphere,
  Body,
  EclipticGeoMoon,
  Equator,
  GeoMoon,
  GeoVector,
  Horizon,
  HorizonFromVector,
  Illumination,
  KM_PER_AU,
  MoonPhase,
  Observer,
  RotateVector,
  Rotation_EQJ_EQD,
  Rotation_EQJ_HOR,
  Rotation_HOR_EQD,
  RotationAxis,
  SearchAltitude,
  SearchHourAngle,
  SearchLocalSolarEclipse,
  SearchLunarEclipse,
  SearchMoonPhase,
  SearchRiseSet,
  SearchSunLongitude,
  Spherical,
  Vector,
  VectorFromSphere,
} from 'astronomy-engine';
import type { MoonView } from './almanac-types.ts';
import { dayNumberOf, MS_PER_DAY } from './day-number.ts';
import { computeTurnDegrees, type Vector3 } from './direction.ts';
import type { InstantMs, PhaseName, Place, SeasonMonth, Star } from './rules.ts';

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
 * The last rise or set before `untilMs`, as {@link findRiseSet} has them.
 * @param limitDays How far to look back, more than 0.
 * @returns null when it does not come within the limit.
 */
export function findLastRiseSet(
  body: Luminary,
  event: 'rise' | 'set',
  place: Place,
  untilMs: InstantMs,
  limitDays: number,
): InstantMs | null {
  return findRiseSet(body, event, place, untilMs, -limitDays);
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
 * The first instant after `fromMs` at which the Sun's centre climbs through an altitude, as before sunrise.
 * @param altitudeDegrees Airless altitude, -90 to 90.
 * @param limitDays How far to look, more than 0.
 * @returns null when the Sun does not climb through it within the limit.
 */
export function findSunClimbing(
  altitudeDegrees: number,
  place: Place,
  fromMs: InstantMs,
  limitDays: number,
): InstantMs | null {
  return search('Sun altitude', () =>
    SearchAltitude(Body.Sun, engineObserver(place), 1, engineTime(fromMs), limitDays, altitudeDegrees),
  );
}

/**
 * The instant of an equinox or solstice.
 * @param year Gregorian year in universal time; near our own era, where the seasons begin from the 10th to the 30th.
 */
export function computeSeason(year: number, month: SeasonMonth): InstantMs {
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

/** Where the Sun or the Moon stands at a place. Angles are topocentric. */
export interface Stand {
  readonly atMs: InstantMs;
  /** Degrees of the centre above the horizon, refracted. */
  readonly altitudeDegrees: number;
  /** Degrees from north through east, 0 to 360. */
  readonly azimuthDegrees: number;
}

/** Where the Sun or the Moon stands at an instant. */
export function computeStand(body: Luminary, place: Place, atMs: InstantMs): Stand {
  return ask(`${body} in the sky`, () => {
    const time = engineTime(atMs);
    const observer = engineObserver(place);
    const { ra, dec } = Equator(BODIES[body], time, observer, true, true);
    const { altitude, azimuth } = Horizon(time, observer, ra, dec, 'normal');
    return { atMs, altitudeDegrees: altitude, azimuthDegrees: azimuth };
  });
}

/** How the Sun and the Moon lie to each other as seen from a place; all in degrees. */
interface SunAndMoon {
  /** Between the centres. */
  readonly apartDegrees: number;
  readonly sunRadiusDegrees: number;
  readonly moonRadiusDegrees: number;
}

/** Radii in kilometres: the Sun as the IAU fixed it in 2015 (Resolution B3); the Moon k = 0.2725076 of the Earth's, IAU 1982. */
const SUN_RADIUS_KM = 695_700;
const MOON_RADIUS_KM = 1738.1;

const RADIUS_KM: Readonly<Record<Luminary, number>> = { sun: SUN_RADIUS_KM, moon: MOON_RADIUS_KM };

function computeRadiusDegrees(radiusKm: number, distanceAu: number): number {
  return (Math.asin(radiusKm / (distanceAu * KM_PER_AU)) * 180) / Math.PI;
}

/** Refraction at the horizon in standard air at sea level, degrees: the engine's own, as almanacs have it. */
const HORIZON_REFRACTION_DEGREES = 34 / 60;

/** Whether any of the Sun or the Moon is above the horizon, which {@link findRiseSet} means too. */
export function isUp(body: Luminary, place: Place, atMs: InstantMs): boolean {
  return ask(`${body} up`, () => {
    const time = engineTime(atMs);
    const observer = engineObserver(place);
    const { ra, dec, dist } = Equator(BODIES[body], time, observer, true, true);
    const limbDegrees = Horizon(time, observer, ra, dec).altitude + computeRadiusDegrees(RADIUS_KM[body], dist);
    return limbDegrees >= -HORIZON_REFRACTION_DEGREES * Atmosphere(place.elevationMetres).density;
  });
}

/** The distance between Sun and Moon in the sky of a place, and how large they look. */
export function computeSunAndMoon(place: Place, atMs: InstantMs): SunAndMoon {
  return ask('Sun and Moon', () => {
    const time = engineTime(atMs);
    const observer = engineObserver(place);
    const sun = Equator(Body.Sun, time, observer, true, true);
    const moon = Equator(Body.Moon, time, observer, true, true);
    return {
      apartDegrees: AngleBetween(sun.vec, moon.vec),
      sunRadiusDegrees: computeRadiusDegrees(SUN_RADIUS_KM, sun.dist),
      moonRadiusDegrees: computeRadiusDegrees(MOON_RADIUS_KM, moon.dist),
    };
  });
}

/** The Earth's umbra at the Moon's distance; all in kilometres, at right angles to the shadow's axis. */
interface UmbraAtMoon {
  readonly umbraRadiusKm: number;
  readonly moonRadiusKm: number;
  /** The Moon's centre from the axis. */
  readonly offAxisKm: number;
}

/** Mean radius of the Moon, and of the Earth with the air that darkens the shadow's edge: as the engine reckons eclipses. */
const MEAN_MOON_RADIUS_KM = 1737.4;
const SHADING_EARTH_RADIUS_KM = 6459;

/** How the Moon lies in the Earth's shadow at an instant near full Moon. */
export function computeUmbraAtMoon(atMs: InstantMs): UmbraAtMoon {
  return ask('Earth shadow', () => {
    const time = engineTime(atMs);
    const [sx, sy, sz] = components(GeoVector(Body.Sun, time, true));
    const [mx, my, mz] = components(GeoMoon(time));
    // The axis leads away from the Sun; `along` counts the Sun's distance as 1.
    const along = -(sx * mx + sy * my + sz * mz) / (sx * sx + sy * sy + sz * sz);
    const offAxisAu = Math.hypot(mx + along * sx, my + along * sy, mz + along * sz);
    return {
      umbraRadiusKm: SUN_RADIUS_KM - (1 + along) * (SUN_RADIUS_KM - SHADING_EARTH_RADIUS_KM),
      moonRadiusKm: MEAN_MOON_RADIUS_KM,
      offAxisKm: offAxisAu * KM_PER_AU,
    };
  });
}

/** The instants of an eclipse. Of a lunar one that only dims in the penumbra, `begins` and `ends` are the penumbra's. */
export interface EclipseCourse {
  readonly kind: 'penumbral' | 'partial' | 'annular' | 'total';
  readonly beginsMs: InstantMs;
  readonly greatestMs: InstantMs;
  readonly endsMs: InstantMs;
  /** The total or annular part, if there is one. */
  readonly core: { readonly fromMs: InstantMs; readonly untilMs: InstantMs } | null;
}

/** The Moon further from the ecliptic than this (degrees) at new or full Moon: no eclipse (the engine's own limit). */
const ECLIPSE_LATITUDE_DEGREES = 1.8;

/** The engine searches on and on, so a phase far from the ecliptic is passed over without asking. */
function mayEclipse(phaseMs: InstantMs): boolean {
  return ask('Moon latitude', () => Math.abs(EclipticGeoMoon(engineTime(phaseMs)).lat) < ECLIPSE_LATITUDE_DEGREES);
}

/** The Moon's penumbra is on the Earth for six and a half hours at most, about new Moon. */
const SHADOW_HOURS = 3;

/**
 * Limits for an hour's steps, so that every instant is within half an hour of a step. The discs touch at 0.56 degree at
 * most, and the Moon gains up to 0.62 degree an hour on a Sun that is up; the Sun climbs up to 15 degrees an hour.
 */
const TOUCH_DEGREES = 0.56 + 0.62 / 2 + 0.05;
const UP_FROM_DEGREES = -15 / 2 - 1;

/** Whether an eclipse of the Sun may be seen at a place: asked for one that is not, the engine goes through years of others. */
function mayEclipseAt(place: Place, newMoonMs: InstantMs): boolean {
  for (let hours = -SHADOW_HOURS; hours <= SHADOW_HOURS; hours += 1) {
    const atMs = newMoonMs + (hours * MS_PER_DAY) / 24;
    if (computeSunAndMoon(place, atMs).apartDegrees > TOUCH_DEGREES) continue;
    if (computeStand('sun', place, atMs).altitudeDegrees > UP_FROM_DEGREES) return true;
  }
  return false;
}

/**
 * The lunar eclipse at a full Moon, for the whole Earth.
 * @param fullMoonMs The instant of a full Moon, within an hour.
 * @returns null when there is none.
 */
export function findLunarEclipse(fullMoonMs: InstantMs): EclipseCourse | null {
  if (!mayEclipse(fullMoonMs)) return null;
  const found = ask('lunar eclipse', () => SearchLunarEclipse(engineTime(fullMoonMs - MS_PER_DAY)));
  const greatestMs = instantOf(found.peak);
  if (Math.abs(greatestMs - fullMoonMs) > MS_PER_DAY / 2) return null;
  const around = (halfMinutes: number) => {
    const halfMs = Math.round(halfMinutes * 60_000);
    return { fromMs: greatestMs - halfMs, untilMs: greatestMs + halfMs };
  };
  const { fromMs, untilMs } = around(found.sd_partial > 0 ? found.sd_partial : found.sd_penum);
  const kind = found.sd_total > 0 ? 'total' : found.sd_partial > 0 ? 'partial' : 'penumbral';
  return {
    kind,
    beginsMs: fromMs,
    greatestMs,
    endsMs: untilMs,
    core: kind === 'total' ? around(found.sd_total) : null,
  };
}

/**
 * The solar eclipse at a new Moon, as it runs at a place, whether the Sun is up or not for part of it.
 * @param newMoonMs The instant of a new Moon, within an hour.
 * @returns null when there is none at the place, or the Sun's centre is down both when it begins and when it ends.
 */
export function findSolarEclipse(place: Place, newMoonMs: InstantMs): EclipseCourse | null {
  if (!mayEclipse(newMoonMs) || !mayEclipseAt(place, newMoonMs)) return null;
  const found = ask('solar eclipse', () =>
    SearchLocalSolarEclipse(engineTime(newMoonMs - MS_PER_DAY), engineObserver(place)),
  );
  const greatestMs = instantOf(found.peak.time);
  if (Math.abs(greatestMs - newMoonMs) > MS_PER_DAY / 2) return null;
  const { total_begin: coreBegins, total_end: coreEnds } = found;
  return {
    kind: coreBegins === undefined ? 'partial' : found.kind === 'annular' ? 'annular' : 'total',
    beginsMs: instantOf(found.partial_begin.time),
    greatestMs,
    endsMs: instantOf(found.partial_end.time),
    core: coreBegins && coreEnds ? { fromMs: instantOf(coreBegins.time), untilMs: instantOf(coreEnds.time) } : null,
  };
}

/** Moon and Sun after sunset as the test of the crescent counts them: from the Earth's centre and without air, degrees. */
interface CrescentGeometry {
  readonly moonAltitudeDegrees: number;
  readonly sunAltitudeDegrees: number;
  /** Angle from the Moon's centre to the Sun's. */
  readonly elongationDegrees: number;
  /** Horizontal parallax of the Moon. */
  readonly parallaxDegrees: number;
}

/** Equatorial radius of the Earth in kilometres: IAU 1976, as in Meeus, Astronomical Algorithms, chapter 11. */
const EARTH_RADIUS_KM = 6378.14;

/**
 * Where Moon and Sun stand over the horizon of a place, were they looked at along lines through the Earth's centre.
 * The vertical is that of the place, at right angles to the ellipsoid.
 */
export function computeCrescentGeometry(place: Place, atMs: InstantMs): CrescentGeometry {
  return ask('crescent', () => {
    const time = engineTime(atMs);
    const toHorizon = Rotation_EQJ_HOR(time, engineObserver(place));
    const moon = GeoVector(Body.Moon, time, true);
    const sun = GeoVector(Body.Sun, time, true);
    const altitudeOf = (vector: Vector) => HorizonFromVector(RotateVector(toHorizon, vector), '').lat;
    return {
      moonAltitudeDegrees: altitudeOf(moon),
      sunAltitudeDegrees: altitudeOf(sun),
      elongationDegrees: AngleBetween(moon, sun),
      parallaxDegrees: (Math.asin(EARTH_RADIUS_KM / (moon.Length() * KM_PER_AU)) * 180) / Math.PI,
    };
  });
}

/**
 * The altitude of a star in degrees, lifted by the refraction of standard air. Proper motion and aberration are left
 * out: 8 arc minutes in 200 years for Arcturus, 5 for Sirius, about 1 or less for most bright stars.
 */
export function computeStarAltitude(place: Place, star: Star, atMs: InstantMs): number {
  return ask('star', () => {
    const time = engineTime(atMs);
    const direction = VectorFromSphere(new Spherical(star.declinationDegrees, star.rightAscensionHours * 15, 1), time);
    const horizontal = RotateVector(Rotation_EQJ_HOR(time, engineObserver(place)), direction);
    return HorizonFromVector(horizontal, 'normal').lat;
  });
}
