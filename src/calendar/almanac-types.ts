import type { NightExplanation } from './explanation.ts';
import type { CalendarRules, CivilDate, InstantMs, NamedNight, PhaseName, Place, SunStays } from './rules.ts';

/** A named night with its place in the whole run. */
export interface RunNight extends NamedNight {
  /** 1-based place in the calendar's list of names. */
  readonly number: number;
  readonly group: string;
  /** 1-based. */
  readonly groupNumber: number;
  /** 1-based place within the group. */
  readonly numberInGroup: number;
}

/** One month of one year. */
export interface MonthRecord {
  readonly name: string;
  readonly say?: string;
  readonly meaning?: string;
  /** 1-based place of the month in its year, the thirteenth month counted: 1 to 13. */
  readonly number: number;
  /** The Gregorian year in which this calendar year's marker lies. */
  readonly year: number;
  readonly firstDate: CivilDate;
  /** Nights in the month. */
  readonly length: number;
  readonly intercalary: boolean;
}

/** Which night a date is. */
export interface NightRecord {
  readonly date: CivilDate;
  readonly beginsMs: InstantMs;
  /** The end is open: this instant belongs to the next night. */
  readonly endsMs: InstantMs;
  /** What the night begins with here: differs from the rule only where the Sun does not rise or set that day. */
  readonly beginsWith: 'sunset' | 'midnight' | 'sunrise';
  /** Only where midnight stands in for sunset or sunrise: whether the Sun stays up that day, or down. */
  readonly sunStays?: SunStays;
  readonly night: RunNight;
  /** True when the name was already given to an earlier night of this month. */
  readonly repeat: boolean;
  /** 1 on the month's first night. */
  readonly nightOfMonth: number;
  readonly month: MonthRecord;
  /** `observed` when an observation or an announced month beginning decided the name, or that the month goes on. */
  readonly basis: 'computed' | 'observed';
}

/** The sky of one night. */
export interface NightSky {
  /** Days since the last conjunction, at the night's beginning. */
  readonly moonAgeDays: number;
  /** Lit part of the disc, 0 to 1, at the night's beginning. */
  readonly illuminatedFraction: number;
  /** The principal phase that falls within the night, if one does. */
  readonly phase: { readonly name: PhaseName; readonly atMs: InstantMs } | null;
  /** Sunset of the night's date; null where the Sun stays up or down that day. */
  readonly sunsetMs: InstantMs | null;
  /** The sunrise that follows; null where the Sun stays up or down. */
  readonly sunriseMs: InstantMs | null;
  /** First moonrise and moonset within the night, or null. */
  readonly moonriseMs: InstantMs | null;
  readonly moonsetMs: InstantMs | null;
}

/** The Moon as it stands in the sky of a place at an instant. Angles are topocentric. */
export interface MoonView {
  readonly atMs: InstantMs;
  /** Degrees above the horizon, refracted. */
  readonly altitudeDegrees: number;
  /** Degrees from north through east, 0 to 360. */
  readonly azimuthDegrees: number;
  /** Lit part of the disc, 0 to 1. */
  readonly litFraction: number;
  /** Direction of the middle of the bright limb: degrees counter-clockwise from the zenith (straight up), 0 to 360, as the observer sees it. */
  readonly brightLimbDegrees: number;
  /** Direction of the Moon's own north pole, counted in the same way; it turns the lunar seas. */
  readonly northPoleDegrees: number;
  readonly waxing: boolean;
  /** False when the Moon is never above the horizon between sunset and sunrise of this night; where the Sun stays up or down, in the whole night. */
  readonly up: boolean;
}

/** The computed calendar of one tradition at one place. All members are pure and memoised. */
export interface Almanac {
  readonly rules: CalendarRules;
  readonly place: Place;
  /** All named nights in order. */
  readonly run: readonly RunNight[];
  /** The night of a civil date, 1800-01-01 to 2200-12-31. Throws RangeError for a date outside, not real, or left out at this place (Apia 2011-12-30). */
  nightOn(date: CivilDate): NightRecord;
  /** The night that holds an instant; answers up to about three days beyond the range of `nightOn`, then throws RangeError. */
  nightAt(instantMs: InstantMs): NightRecord;
  /** The nights of all civil dates from `from` to `to`, both included, in order; dates the place left out are passed over. */
  nights(from: CivilDate, to: CivilDate): Generator<NightRecord>;
  /** The nights of the month that holds a date, in order. */
  nightsOfMonth(date: CivilDate): readonly NightRecord[];
  /** Why a date has its night: the chain as data, without words. Throws as `nightOn` does. */
  explain(date: CivilDate): NightExplanation;
  skyOf(record: NightRecord): NightSky;
  /** The Moon when it is best seen that night: at the end of civil twilight if it is up then, else in the middle of its time above the horizon between sunset and sunrise, else (never up in the dark) at its highest. */
  moonBestSeen(record: NightRecord): MoonView;
  /** The Moon at its upper transit nearest the middle of the night. */
  moonHighest(record: NightRecord): MoonView;
}
