import { MS_PER_DAY, renderCivilDate } from './day-number.ts';
import type { Doubt, Reckoning } from './doubt-types.ts';
import type { CloseReason } from './explanation.ts';
import { movePhase } from './lunations.ts';
import type { MonthSpan } from './month-span.ts';
import { createMonths, type Months } from './months.ts';
import { findNearBoundary, type NearBoundary } from './near-boundary.ts';
import type { InstantMs, PhaseName } from './rules.ts';

/** A phase of a lunation. */
interface PhaseOf {
  readonly lunation: number;
  readonly phase: PhaseName;
  readonly atMs: InstantMs;
}

/** A phase near the boundary of its night, and what it decides. */
interface ClosePhase extends PhaseOf {
  readonly near: NearBoundary;
  readonly reason: CloseReason;
}

/** The month spoken of, and the one that ends it. */
export const OPENED = ['this-month', 'next-month'] as const;

/** The first night of a month by the rule alone, or as it is where the rule gives none. */
export function findFirstDate(months: Months, lunation: number) {
  const day = months.openingOf(lunation).firstDay ?? months.findBeginning(lunation)?.day;
  if (day === undefined) throw new Error(`The month of lunation ${lunation} has no beginning.`);
  return renderCivilDate(day);
}

/** The phases about a year's beginning: the one that opens it, and the one before. */
export function listYearPhases({ rules, lunations, months }: Reckoning, year: number) {
  const { phase } = rules.yearBegins;
  const first = months.phaseLunationOf(months.firstMonthOf(year));
  const phaseOf = (lunation: number) => ({ lunation, phase, atMs: lunations.phaseInstant(lunation, phase) });
  return { first: phaseOf(first), before: phaseOf(first - 1) };
}

/** What a close call says of a phase. */
function describePhase({ phase, atMs }: PhaseOf, { minutes, isUnsure }: NearBoundary) {
  return { phase, atMs, marginMinutes: minutes, isUnsure } as const;
}

function listOpeningPhases({ rules, line, months }: Reckoning, month: MonthSpan): ClosePhase[] {
  const { at } = rules.monthBegins;
  if (at === 'first-crescent') return [];
  return OPENED.flatMap((opens, later) => {
    const lunation = month.lunation + later;
    const atMs = months.openingOf(lunation).phaseMs;
    const found = { lunation, phase: at === 'full-moon' ? 'full-moon' : 'new-moon', atMs } as const;
    const near = findNearBoundary(line, rules.dayBegins, atMs);
    if (near === null) return [];
    const about = { opens, firstDate: findFirstDate(months, lunation) };
    return [{ ...found, near, reason: { what: 'opening-phase', ...about, ...describePhase(found, near) } }];
  });
}

/** Phases that names are tied to, in the month or in the nights beside it, from where they might come into it. */
function listAnchorPhases({ rules, line, lunations, months }: Reckoning, { days, lunation }: MonthSpan): ClosePhase[] {
  const [first, last] = [days[0], days.at(-1)];
  if (first === undefined || last === undefined) return [];
  const fromMs = line.beginningOf(first).atMs - MS_PER_DAY;
  const untilMs = line.beginningOf(last).atMs + 2 * MS_PER_DAY;
  return months.run.flatMap(({ anchor: phase, name: night }) => {
    if (phase === undefined) return [];
    return [-1, 0, 1, 2].flatMap((later): ClosePhase[] => {
      const found = { lunation: lunation + later, phase, atMs: lunations.phaseInstant(lunation + later, phase) };
      if (found.atMs < fromMs || found.atMs > untilMs) return [];
      const near = findNearBoundary(line, rules.dayBegins, found.atMs);
      return near ? [{ ...found, near, reason: { what: 'anchor', night, ...describePhase(found, near) } }] : [];
    });
  });
}

/** The year's phase near the beginning of the marker's night: it counts from there on. */
function listMarkerPhases(reckoning: Reckoning, year: number): ClosePhase[] {
  const { rules, line, months } = reckoning;
  const { day } = months.markerOf(year);
  const beginsMs = line.beginningOf(day).atMs;
  const { first, before } = listYearPhases(reckoning, year);
  return [first, before].flatMap((found): ClosePhase[] => {
    if (Math.abs(found.atMs - beginsMs) > MS_PER_DAY) return [];
    const near = findNearBoundary(line, rules.dayBegins, found.atMs);
    if (near?.boundaryMs !== beginsMs) return [];
    const about = { year, markerDate: renderCivilDate(day) };
    return [{ ...found, near, reason: { what: 'year-phase', ...about, ...describePhase(found, near) } }];
  });
}

/** The months if a phase fell on the other side of the boundary that it is near to. */
function createBeyond(
  { rules, line, lunations, months }: Reckoning,
  { lunation, phase, atMs, near }: ClosePhase,
): Months {
  // A night begins at its boundary: the last instant of the one before is a millisecond earlier.
  const beyondMs = atMs < near.boundaryMs ? near.boundaryMs : near.boundaryMs - 1;
  const { openingOf, markerOf } = months;
  // Crescents do not hang on the hour of the conjunction, and would be looked for anew.
  const sources = rules.monthBegins.at === 'first-crescent' ? { openingOf, markerOf } : { markerOf };
  return createMonths(rules, line, movePhase(lunations, lunation, phase, beyondMs), sources);
}

/**
 * The phases near a boundary that open the month or the next one, that names are tied to, or by which the years begin;
 * each once, with all that it decides. A name tied to the phase that opens the month says no more than that.
 */
export function listPhaseDoubts(reckoning: Reckoning, month: MonthSpan, years: readonly number[]): Doubt[] {
  const close = [
    ...listOpeningPhases(reckoning, month),
    ...listAnchorPhases(reckoning, month),
    ...years.flatMap((year) => listMarkerPhases(reckoning, year)),
  ];
  const isOf = (one: ClosePhase) => (other: ClosePhase) => one.atMs === other.atMs;
  return close.flatMap((each, index) => {
    if (close.findIndex(isOf(each)) < index) return [];
    const all = close.filter(isOf(each)).map(({ reason }) => reason);
    const reasons = all.filter(({ what }, place) => place === 0 || what === 'year-phase');
    return [{ reasons, other: createBeyond(reckoning, each) }];
  });
}
