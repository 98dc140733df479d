import type { RunNight } from './almanac-types.ts';
import type { CrescentReport } from './crescent.ts';
import type {
  CivilDate,
  CrescentVisibility,
  DayBegins,
  InstantMs,
  MonthOpening,
  Observation,
  PhaseName,
  SunStays,
  YearMarker,
} from './rules.ts';

export type { CrescentReport } from './crescent.ts';

/** Which month's beginning is in doubt: that of the month spoken of, or of the one that follows and so ends it. */
export type OpenedMonth = 'this-month' | 'next-month';

/** How near a phase, an equinox or a solstice is to the boundary of its night. */
interface BoundaryDoubt {
  /** From it to the boundary: up to an hour, or more where that is unsure. */
  readonly marginMinutes: number;
  /** The Sun only just rises or sets there, or only just does not: the boundary itself may lie hours from here. */
  readonly isUnsure: boolean;
}

/** A phase in doubt, or on which a year hangs. */
interface PhaseDoubt {
  readonly phase: PhaseName;
  readonly atMs: InstantMs;
}

/** A month whose beginning is in doubt. */
interface MonthDoubt {
  readonly opens: OpenedMonth;
  /** Its first date by the rule, as computed. */
  readonly firstDate: CivilDate;
}

/** A year whose beginning is in doubt, with the phase by which its first month is found. */
interface YearDoubt extends PhaseDoubt {
  readonly year: number;
  /** The date of the night from which the year is measured. */
  readonly markerDate: CivilDate;
}

/** Why a call is close: whoever can, checks it by eye. */
export type CloseReason =
  /** A month's opening phase falls near the boundary of its night. */
  | ({ readonly what: 'opening-phase' } & MonthDoubt & PhaseDoubt & BoundaryDoubt)
  /** A crescent that was tested for a month, at `atMs`, has a q within 0.05 of the limit; `marginQ` is q less the limit. */
  | ({
      readonly what: 'crescent';
      readonly date: CivilDate;
      readonly atMs: InstantMs;
      readonly q: number;
      readonly marginQ: number;
    } & MonthDoubt)
  /** The phase of an anchor falls near the boundary of its night; `night` is the name that is tied to it. */
  | ({ readonly what: 'anchor'; readonly night: string } & PhaseDoubt & BoundaryDoubt)
  /** The year's phase falls near the beginning of the marker's night, from which on it counts. */
  | ({ readonly what: 'year-phase' } & YearDoubt & BoundaryDoubt)
  /** The equinox or solstice falls near the boundary of its night, and the phase on that night or the one beyond. */
  | ({ readonly what: 'year-marker' } & YearDoubt & BoundaryDoubt)
  /** The phase falls within a night of a star's morning; the margin is how far the star stood from the height that counts. */
  | ({ readonly what: 'rising'; readonly star: string; readonly marginDegrees: number } & YearDoubt);

/** Whether a reason is about the beginning of a year. */
export function isOfYear({ what }: Pick<CloseReason, 'what'>): boolean {
  return what === 'year-phase' || what === 'year-marker' || what === 'rising';
}

/** What a date would be if a call fell the other way. */
export interface OtherNight {
  readonly night: string;
  readonly nightOfMonth: number;
  readonly month: {
    readonly name: string;
    readonly number: number;
    readonly year: number;
    readonly length: number;
  };
}

/** A close call on the way to a night; `otherwise` is null where the calendar then could not tell the month. */
export type CloseCall = CloseReason & { readonly otherwise: OtherNight | null };

/** What fixed the first night of the month. */
export type MonthBasis =
  | { readonly kind: 'rule' }
  | { readonly kind: 'observation'; readonly observation: Observation }
  | { readonly kind: 'announced'; readonly date: CivilDate };

/** What moved the end of a month: the next one was seen or announced to begin elsewhere than by the rule. */
export interface MonthEnding {
  readonly basis: Exclude<MonthBasis, { readonly kind: 'rule' }>;
  /** Nights that the month would have if the next one began by the rule. */
  readonly foreseenLength: number;
}

/** The chain from sky to name for one date: data, no words. */
export interface NightExplanation {
  readonly date: CivilDate;
  readonly beginsMs: InstantMs;
  readonly endsMs: InstantMs;
  readonly dayBegins: DayBegins;
  /** What the night begins with here; `midnight` where the Sun does not rise or set. */
  readonly beginsWith: DayBegins;
  /** Only where midnight stands in for sunset or sunrise: whether the Sun stays up that day, or down. */
  readonly sunStays?: SunStays;
  readonly night: RunNight;
  readonly repeat: boolean;
  readonly nightOfMonth: number;
  readonly month: {
    readonly name: string;
    readonly number: number;
    readonly year: number;
    readonly intercalary: boolean;
    readonly length: number;
    readonly firstDate: CivilDate;
    /** The first date by the rule alone; null where no crescent could be told and only a record gives the month. */
    readonly computedFirstDate: CivilDate | null;
    readonly basis: MonthBasis;
    /** Null where the month ends as the rule foresees. */
    readonly ending: MonthEnding | null;
    readonly opening: MonthOpening;
    /** The conjunction, or the full Moon for `full-moon`, from which the month is counted. */
    readonly openingPhase: { readonly name: PhaseName; readonly atMs: InstantMs };
    /** The date whose night holds the opening phase. */
    readonly openingDate: CivilDate;
    /** From the opening phase to the nearer boundary of its night. */
    readonly openingMarginMinutes: number;
    /** The boundary meant. */
    readonly openingBoundaryMs: InstantMs;
    /** For `first-crescent`: the evenings looked at, in order; the last one opened the month. */
    readonly crescents: readonly CrescentReport[];
    readonly visibility: CrescentVisibility | null;
  };
  readonly year: {
    readonly phase: PhaseName;
    /** The instant of that phase in the year's first month. */
    readonly phaseAtMs: InstantMs;
    readonly marker: YearMarker;
    readonly markerDate: CivilDate;
    /** The equinox or solstice, or when the Sun stood at its altitude on the star's morning; null for a date. */
    readonly markerAtMs: InstantMs | null;
  };
  readonly name: {
    /** What decided the name: counting from night 1, an anchor's stretch, or an observation from its date on. */
    readonly by: 'counting' | 'anchor' | 'observation';
    /** The observation that counts from its date to the month's end, if one does. */
    readonly observation: Observation | null;
    /** The anchors of the month whose phase decided its stretches. */
    readonly anchors: readonly {
      readonly night: string;
      readonly phase: PhaseName;
      readonly date: CivilDate;
      readonly atMs: InstantMs;
      readonly marginMinutes: number;
    }[];
  };
  readonly phase: { readonly name: PhaseName; readonly atMs: InstantMs } | null;
  readonly closeCall: boolean;
  readonly closeCalls: readonly CloseCall[];
}
