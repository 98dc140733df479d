import { type CrescentSearch, findFirstCrescent } from './crescent.ts';
import type { DayNumber } from './day-number.ts';
import type { Lunations } from './lunations.ts';
import { createMemo } from './memo.ts';
import { moveNights } from './move-nights.ts';
import type { NightLine } from './night-line.ts';
import type { CalendarRules, InstantMs } from './rules.ts';

/** The class of crescent that opens a month where the calendar does not say. */
export const DEFAULT_VISIBILITY = 'B';

/** How the rule alone opens a month. */
export interface MonthOpening {
  /** The conjunction or full Moon from which the month is counted. */
  readonly phaseMs: InstantMs;
  /** The date whose night holds it. */
  readonly phaseDay: DayNumber;
  /** For `first-crescent`, else null. */
  readonly search: CrescentSearch | null;
  /** Night 1; null where the first crescent cannot be told. */
  readonly firstDay: DayNumber | null;
  /** Night 1, or about where it must be. */
  readonly nearDay: DayNumber;
}

/** About three years of months. */
const MONTHS_KEPT = 40;

/** Nights from the night that holds the conjunction to that of the first crescent, as a rule; for what cannot be told. */
const CRESCENT_NIGHTS = 2;

/**
 * Opens months by the rule alone, by the lunation of their opening phase.
 * @param line The nights of the place.
 */
export function createMonthOpenings(
  { monthBegins }: Pick<CalendarRules, 'monthBegins'>,
  line: NightLine,
  lunations: Lunations,
): (lunation: number) => MonthOpening {
  const { at, offset, visibility = DEFAULT_VISIBILITY } = monthBegins;
  return createMemo(MONTHS_KEPT, (lunation: number) => {
    const phaseMs = lunations.phaseInstant(lunation, at === 'full-moon' ? 'full-moon' : 'new-moon');
    const phaseDay = line.dayHolding(phaseMs);
    const search = at === 'first-crescent' ? findFirstCrescent(line, phaseMs, visibility) : null;
    const openingDay = search ? search.day : phaseDay;
    const firstDay = openingDay === null ? null : moveNights(line, openingDay, offset);
    const nearDay = firstDay ?? moveNights(line, phaseDay, offset + CRESCENT_NIGHTS);
    return { phaseMs, phaseDay, search, firstDay, nearDay };
  });
}
