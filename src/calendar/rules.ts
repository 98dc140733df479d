/** A date of the civil calendar at the school's place, as `YYYY-MM-DD` (proleptic Gregorian). */
export type CivilDate = string;

/** An instant: milliseconds since 1970-01-01T00:00:00Z, leap seconds left out, as in ECMAScript. */
export type InstantMs = number;

/** When the day of a tradition begins. */
export type DayBegins = 'sunset' | 'midnight' | 'sunrise';

/** What the Sun does on a polar day, without sunset or sunrise: it stays up (midnight sun), or down (polar night). */
export type SunStays = 'up' | 'down';

/** The four principal phases: the Moon's ecliptic longitude is 0, 90, 180 or 270 degrees ahead of the Sun's. */
export type PhaseName = 'new-moon' | 'first-quarter' | 'full-moon' | 'last-quarter';

/** Where the sky is looked at from. */
export interface Place {
  /** Degrees, north positive, -90 to 90. */
  readonly latitudeDegrees: number;
  /** Degrees, east positive, -180 to 180. */
  readonly longitudeDegrees: number;
  /** Metres above sea level. */
  readonly elevationMetres: number;
  /** IANA time zone name. */
  readonly timeZone: string;
}

/** A named night as the calendar file lists it. */
export interface NamedNight {
  readonly name: string;
  /** How to say the name, in plain spelling. */
  readonly say?: string;
  readonly meaning?: string;
  /** Key of a gesture in the school's gestures file. */
  readonly gesture?: string;
  /** The principal phase that this night must hold. */
  readonly anchor?: PhaseName;
  /** True when the night may be left out or repeated so that names and sky agree. */
  readonly flexible?: boolean;
}

/** A group of consecutive nights. */
export interface NightGroup {
  readonly name: string;
  readonly say?: string;
  readonly meaning?: string;
  readonly nights: readonly NamedNight[];
}

/** A named month as the calendar file lists it. */
export interface NamedMonth {
  readonly name: string;
  readonly say?: string;
  readonly meaning?: string;
}

/**
 * Classes of an evening crescent that may open a month: A easily seen, B seen under perfect conditions, C found with
 * optical aid and then seen, D seen with optical aid only (Yallop, NAO Technical Note 69, 1997).
 */
export type CrescentVisibility = 'A' | 'B' | 'C' | 'D';

/** What opens a month, and by how many whole nights the first night is moved from there. */
export interface MonthOpening {
  /** `first-crescent`: night 1 is the first night after conjunction whose evening crescent reaches `visibility`. */
  readonly at: 'conjunction' | 'first-crescent' | 'full-moon';
  readonly offset: number;
  /** For `first-crescent` only; absent: `B`. */
  readonly visibility?: CrescentVisibility;
}

/** A star by its place at the epoch and equinox J2000. */
export interface Star {
  readonly name: string;
  /** 0 (included) to 24 (left out). */
  readonly rightAscensionHours: number;
  /** -90 to 90. */
  readonly declinationDegrees: number;
}

/** A record that on a date the night was seen to be a given one. */
export interface Observation {
  readonly date: CivilDate;
  /** Name of a night of the calendar. */
  readonly night: string;
  /** Who saw it, or how. */
  readonly by?: string;
  /** Where it was seen, in words. */
  readonly place?: string;
}

/** The months in which an equinox or a solstice falls. */
export type SeasonMonth = 'march' | 'june' | 'september' | 'december';

/** What the first month of the year is measured against. */
export type YearMarker =
  | { readonly kind: 'date' /** `MM-DD` */; readonly monthDay: string }
  | { readonly kind: 'solstice'; readonly month: 'june' | 'december' }
  | { readonly kind: 'equinox'; readonly month: 'march' | 'september' }
  | {
      readonly kind: 'rising';
      readonly star: Star;
      /** Refracted altitude at which the star counts as risen. */
      readonly starAltitudeDegrees: number;
      /** Airless altitude of the Sun's centre before sunrise at which the star is looked for; negative. */
      readonly sunAltitudeDegrees: number;
    };

/** The rules of one tradition, as far as the computed calendar needs them. */
export interface CalendarRules {
  readonly dayBegins: DayBegins;
  /** Night 1 is the night that holds the instant `at`, or the night of the first crescent, moved by `offset` whole nights. */
  readonly monthBegins: MonthOpening;
  readonly groups: readonly NightGroup[];
  /** 12 or 13 of them, in order. */
  readonly months: readonly NamedMonth[];
  /** The first month is the first whose `phase` falls on or after the marker. */
  readonly yearBegins: { readonly phase: PhaseName; readonly onOrAfter: YearMarker };
  /** The thirteenth month of a long year stands after month `after` (1 to 12). Absent: the last month's name is said twice. */
  readonly thirteenthMonth?: NamedMonth & { readonly after: number };
  /** What was seen; outranks computation from its date on. Those of the school file have taken the place of the calendar's. */
  readonly observations: readonly Observation[];
  /** First dates of months as announced, in any order. */
  readonly announcedMonths: readonly CivilDate[];
}
