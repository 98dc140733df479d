import { CIVIL_TWILIGHT_DEGREES, listUp, type Stretch } from './above-horizon.ts';
import type { Almanac } from './almanac-types.ts';
import { MS_PER_DAY } from './day-number.ts';
import { requireLocalInstant } from './local-instant.ts';
import type { CivilDate, InstantMs, Place } from './rules.ts';
import { computeMoonTransit, computeStand, computeSunAndMoon, findSunSinking, type Stand } from './sky.ts';

/** The eight directions that children learn; a direction is named after the nearest. */
const COMPASS_POINTS = [
  'north',
  'north-east',
  'east',
  'south-east',
  'south',
  'south-west',
  'west',
  'north-west',
] as const;

/** One of the eight directions. */
export type CompassPoint = (typeof COMPASS_POINTS)[number];

/** The Moon at an instant, and whether it is safe and dark enough to look at. */
export interface MoonStand extends Stand {
  readonly point: CompassPoint;
  /** Degrees of the Sun's centre above the horizon, refracted. */
  readonly sunAltitudeDegrees: number;
  /** Degrees between Moon and Sun in the sky, 0 to 180. */
  readonly fromSunDegrees: number;
}

/**
 * When the Moon is best looked for between the end of a day's light and bedtime. Only what holds `at` may be turned into
 * an invitation to look: there the Sun is fully down, or at least a quarter of the sky away from the Moon.
 */
type EveningLook =
  /** It is up when the Sun is fully down: look from `at` on. `nearSun` is a crescent, or nearly. */
  | { readonly kind: 'after-dark'; readonly at: MoonStand; readonly nearSun: boolean }
  /** It rises, or climbs clear of the horizon, later: look at bedtime, which is `at`. */
  | { readonly kind: 'rising'; readonly risesMs: InstantMs; readonly at: MoonStand }
  /** Bedtime comes before dark, and the Moon is well up, far from the Sun: look at bedtime, which is `at`. */
  | { readonly kind: 'in-daylight'; readonly at: MoonStand }
  /** It is not well up by bedtime, rises later that night, and is far from the Sun. */
  | { readonly kind: 'later'; readonly risesMs: InstantMs }
  /** It is light until bedtime, and the Moon is low, down or near the Sun. */
  | { readonly kind: 'too-light' }
  /** It is dark, and the Moon is up but low until bedtime: at high latitudes it may circle so for days. */
  | { readonly kind: 'low' }
  /** It is dark, and the Moon is down; it may come up before dawn, near the Sun. */
  | { readonly kind: 'down' };

/** The Moon between the beginning and the end of school. Only what holds `at` may be turned into an invitation to look. */
type SchoolLook =
  | { readonly kind: 'down' }
  /** Less than a quarter of the sky from the Sun: not to be looked for by day. */
  | { readonly kind: 'near-sun' }
  /** At the instant of school time when it stands highest. */
  | { readonly kind: 'up'; readonly at: MoonStand };

/** The Moon of one evening at a place. */
export interface EveningSky {
  readonly date: CivilDate;
  /** End of civil twilight; the end of school where the Sun is as low as that by then; null where it stays light. */
  readonly duskMs: InstantMs | null;
  readonly bedtimeMs: InstantMs;
  readonly atDusk: MoonStand | null;
  readonly atBedtime: MoonStand;
  /** The stretches from noon to noon during which the Moon is above the horizon; at the ends they may be cut off. */
  readonly moonUp: readonly Stretch[];
  readonly evening: EveningLook;
  readonly school: SchoolLook;
}

/** The hours of a school day: local times, `HH:MM`. */
export interface SchoolHours {
  readonly classBegins: string;
  readonly classEnds: string;
  readonly bedtime: string;
}

/** Lower than this (degrees) the Moon is behind houses and trees: half a fist at arm's length (common practice, no source). */
const CLEAR_DEGREES = 5;

/** By day the Moon is pointed out only if it is a quarter of the sky from the Sun, or more (our own rule, for safety). */
const FAR_FROM_SUN_DEGREES = 90;

/** The nearest of the eight directions. @param azimuthDegrees From north through east. */
export function findCompassPoint(azimuthDegrees: number): CompassPoint {
  const eighths = Math.round(azimuthDegrees / 45);
  return COMPASS_POINTS[eighths - 8 * Math.floor(eighths / 8)] ?? 'north';
}

/** The Moon at an instant, with what safety needs to know. */
function computeMoonStand(place: Place, atMs: InstantMs): MoonStand {
  const stand = computeStand('moon', place, atMs);
  return {
    ...stand,
    point: findCompassPoint(stand.azimuthDegrees),
    sunAltitudeDegrees: computeStand('sun', place, atMs).altitudeDegrees,
    fromSunDegrees: computeSunAndMoon(place, atMs).apartDegrees,
  };
}

function isClear({ altitudeDegrees }: Stand): boolean {
  return altitudeDegrees >= CLEAR_DEGREES;
}

function isFarFromSun({ fromSunDegrees }: MoonStand): boolean {
  return fromSunDegrees >= FAR_FROM_SUN_DEGREES;
}

/** The Sun's centre at the end of civil twilight with the 0.6 degrees that `computeStand` adds for the air, and a margin. */
const REFRACTED_DUSK_DEGREES = -5.3;

/** Whether the Moon stands less than a quarter of the sky from a Sun that is not fully down: it is not to be looked for. */
export function isMoonTooNearSun(place: Place, atMs: InstantMs): boolean {
  const isLight = computeStand('sun', place, atMs).altitudeDegrees > REFRACTED_DUSK_DEGREES;
  return isLight && computeSunAndMoon(place, atMs).apartDegrees < FAR_FROM_SUN_DEGREES;
}

/** The end of civil twilight, or the beginning of the evening if the Sun is as low as that; null if it does not sink so far. */
function findDusk(place: Place, evening: Stretch): InstantMs | null {
  if (computeStand('sun', place, evening.fromMs).altitudeDegrees < CIVIL_TWILIGHT_DEGREES) return evening.fromMs;
  // At a pole the Sun may have come up for half a year before the evening begins.
  if (evening.untilMs <= evening.fromMs) return null;
  return findSunSinking(CIVIL_TWILIGHT_DEGREES, place, evening.fromMs, (evening.untilMs - evening.fromMs) / MS_PER_DAY);
}

/** The beginning of the stretch that holds an instant; undefined when none does. */
function findRise(moonUp: readonly Stretch[], atMs: InstantMs): InstantMs | undefined {
  return moonUp.find(({ fromMs, untilMs }) => fromMs <= atMs && atMs < untilMs)?.fromMs;
}

/** A Moon that is clear of the horizon neither at dusk nor at bedtime. @param laterMs Its next rise that may be told of. */
function chooseLowLook(
  place: Place,
  { atBedtime, bedtimeMs, moonUp }: Omit<EveningSky, 'evening' | 'school'>,
  atDusk: MoonStand,
  noonMs: InstantMs,
  laterMs: InstantMs | undefined,
): EveningLook {
  // Where its arc is short, the Moon can come up and go down again within an evening.
  const transitMs = computeMoonTransit(place, atDusk.atMs, 'after');
  const atTransit = transitMs < bedtimeMs ? [computeMoonStand(place, transitMs)] : [];
  const at = atTransit.find(isClear);
  if (at !== undefined) return { kind: 'after-dark', at, nearSun: !isFarFromSun(at) };
  // One that came up just before bedtime is still climbing; a full one may have come up before it was dark.
  const riseMs = findRise(moonUp, bedtimeMs);
  const isClimbing = riseMs !== undefined && (riseMs > atDusk.atMs || (riseMs > noonMs && isFarFromSun(atBedtime)));
  const lateMs = isClimbing ? riseMs : laterMs;
  if (lateMs !== undefined) return { kind: 'later', risesMs: lateMs };
  const isEverUp = [atDusk, atBedtime, ...atTransit].some(({ altitudeDegrees }) => altitudeDegrees > 0);
  return { kind: isEverUp ? 'low' : 'down' };
}

/** @param noonMs Where `moonUp` begins. */
function chooseEveningLook(
  place: Place,
  sky: Omit<EveningSky, 'evening' | 'school'>,
  noonMs: InstantMs,
  nightEndsMs: InstantMs,
): EveningLook {
  const { atBedtime, atDusk, bedtimeMs, moonUp } = sky;
  // A Moon near the Sun comes up not long before it: no time is given for that.
  const laterMs = isFarFromSun(atBedtime)
    ? moonUp.find(({ fromMs }) => fromMs > bedtimeMs && fromMs < nightEndsMs)?.fromMs
    : undefined;
  if (atDusk === null || atDusk.atMs > bedtimeMs) {
    if (isClear(atBedtime) && isFarFromSun(atBedtime)) return { kind: 'in-daylight', at: atBedtime };
    return laterMs === undefined ? { kind: 'too-light' } : { kind: 'later', risesMs: laterMs };
  }
  if (isClear(atDusk)) return { kind: 'after-dark', at: atDusk, nearSun: !isFarFromSun(atDusk) };
  if (!isClear(atBedtime)) return chooseLowLook(place, sky, atDusk, noonMs, laterMs);
  const riseMs = findRise(moonUp, bedtimeMs);
  // In polar regions the Moon can climb for half a day without having come up since noon.
  if (riseMs !== undefined && riseMs > noonMs) return { kind: 'rising', risesMs: riseMs, at: atBedtime };
  return { kind: 'after-dark', at: atBedtime, nearSun: !isFarFromSun(atBedtime) };
}

function chooseSchoolLook(place: Place, school: Stretch): SchoolLook {
  const stands = listUp('moon', place, school).flatMap(({ fromMs, untilMs }) =>
    [fromMs, untilMs].map((atMs) => computeMoonStand(place, atMs)),
  );
  const [highest] = stands.filter(isClear).sort((one, other) => other.altitudeDegrees - one.altitudeDegrees);
  if (highest === undefined) return { kind: 'down' };
  return isFarFromSun(highest) ? { kind: 'up', at: highest } : { kind: 'near-sun' };
}

/**
 * The Moon of the school hours and the evening of a date. The horizon is level.
 * @param date A date that the almanac answers for.
 */
export function computeEveningSky(almanac: Almanac, date: CivilDate, hours: SchoolHours): EveningSky {
  const { place } = almanac;
  const toInstant = (clock: string) => requireLocalInstant(place.timeZone, date, clock);
  const { sunsetMs, sunriseMs } = almanac.skyOf(almanac.nightOn(date));
  const noonMs = toInstant('12:00');
  const endMs = noonMs + MS_PER_DAY;
  const bedtimeMs = toInstant(hours.bedtime);
  const school = { fromMs: toInstant(hours.classBegins), untilMs: toInstant(hours.classEnds) };
  // Where the Sun does not set or rise, or sets in school hours, the evening begins when school is over.
  const afterSchoolMs = Math.min(school.untilMs, bedtimeMs);
  const eveningMs = Math.max(sunsetMs ?? afterSchoolMs, afterSchoolMs);
  const duskMs = findDusk(place, { fromMs: eveningMs, untilMs: sunriseMs ?? endMs });
  const sky = {
    date,
    duskMs,
    bedtimeMs,
    atDusk: duskMs === null ? null : computeMoonStand(place, duskMs),
    atBedtime: computeMoonStand(place, bedtimeMs),
    moonUp: listUp('moon', place, { fromMs: noonMs, untilMs: endMs }),
  };
  return {
    ...sky,
    evening: chooseEveningLook(place, sky, noonMs, sunriseMs ?? endMs),
    school: chooseSchoolLook(place, school),
  };
}
