import type { CloseReason } from './explanation.ts';
import type { Lunations } from './lunations.ts';
import type { Months } from './months.ts';
import type { NightLine } from './night-line.ts';
import type { CalendarRules } from './rules.ts';

/** A calendar at a place, with what it was worked out from. */
export interface Reckoning {
  readonly rules: CalendarRules;
  readonly line: NightLine;
  readonly lunations: Lunations;
  readonly months: Months;
}

/** Something in the sky that might as well have fallen the other way. */
export interface Doubt {
  /** What it is; a phase may open a month and a year at once. */
  readonly reasons: readonly CloseReason[];
  /** The months if it had. */
  readonly other: Months;
}
