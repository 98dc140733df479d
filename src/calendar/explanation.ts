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
  YearMarker,
} from './rules.ts';

export type { CrescentReport } from './crescent.ts';

/** Why a call is close: whoever can, checks it by eye. */
export type CloseCall =
  /** The month's opening phase falls within an hour of the boundary of its night. */
  | { readonly what: 'opening-phase'; readonly marginMinutes: number }
  /** A crescent that was tested for the month has a q within 0.05 of the limit; `marginQ` is q less the limit. */
  | { readonly what: 'crescent'; readonly date: CivilDate; readonly q: number; readonly marginQ: number }
  /** A phase falls within a night of a year's marker, so that the names of months might be others. */
  | { readonly what: 'year-marker'; readonly marginNights: number }
  /** With `year-marker`, where that is a star: how far it stood from its altitude on the nearer of the two mornings. */
  | { readonly what: 'rising'; readonly marginDegrees: number }
  /** The phase of an anchor falls within an hour of the boundary of its night. */
  | { readonly what: 'anchor'; readonly phase: PhaseName; readonly marginMinutes: number };

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
