/** A date of the civil calendar at the school's place, as `YYYY-MM-DD` (proleptic Gregorian). */
export type CivilDate = string;

/** An instant: milliseconds since 1970-01-01T00:00:00Z, leap seconds left out, as in ECMAScript. */
export type InstantMs = number;

/** When the day of a tradition begins. */
export type DayBegins = 'sunset' | 'midnight' | 'sunrise';

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

/** What the first month of the year is measured against. */
export type YearMarker =
  | { readonly kind: 'date' /** `MM-DD` */; readonly monthDay: string }
  | { readonly kind: 'solstice'; readonly month: 'june' | 'december' }
  | { readonly kind: 'equinox'; readonly month: 'march' | 'september' };

/** The rules of one tradition, as far as the computed calendar needs them. */
export interface CalendarRules {
  readonly dayBegins: DayBegins;
  /** Night 1 is the night that holds the instant `at`, moved by `offset` whole nights. */
  readonly monthBegins: { readonly at: 'conjunction' | 'full-moon'; readonly offset: number };
  readonly groups: readonly NightGroup[];
  /** 12 or 13 of them, in order. */
  readonly months: readonly NamedMonth[];
  /** The first month is the first whose `phase` falls on or after the marker. */
  readonly yearBegins: { readonly phase: PhaseName; readonly onOrAfter: YearMarker };
  /** The thirteenth month of a long year stands after month `after` (1 to 12). Absent: the last month's name is said twice. */
  readonly thirteenthMonth?: NamedMonth & { readonly after: number };
}
