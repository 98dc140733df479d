import { type CrescentReport, findClassLimit } from './crescent.ts';
import { parseCivilDate, renderCivilDate } from './day-number.ts';
import type { Doubt, Reckoning } from './doubt-types.ts';
import { DEFAULT_VISIBILITY, type MonthOpening } from './month-openings.ts';
import type { MonthSpan } from './month-span.ts';
import { createMonths } from './months.ts';
import { moveNights } from './move-nights.ts';
import { findNearBoundary } from './near-boundary.ts';
import { findFirstDate, listPhaseDoubts, listYearPhases, OPENED } from './phase-doubts.ts';

/** A crescent this near to the limit of its class; Yallop's classes overlap by more in his own list of sightings. */
const CLOSE_Q = 0.05;

/** The first night if an evening's crescent had been judged the other way: the next evening's is surely broad enough. */
function openOtherwise({ rules, line }: Reckoning, opening: MonthOpening, evening: CrescentReport): MonthOpening {
  const { offset } = rules.monthBegins;
  const day = moveNights(line, parseCivilDate(evening.date), evening.seen ? offset + 1 : offset);
  return { ...opening, firstDay: day, nearDay: day };
}

function listCrescentDoubts(reckoning: Reckoning, month: MonthSpan): Doubt[] {
  const { rules, line, lunations, months } = reckoning;
  const limit = findClassLimit(rules.monthBegins.visibility ?? DEFAULT_VISIBILITY);
  return OPENED.flatMap((opens, later) => {
    const lunation = month.lunation + later;
    const opening = months.openingOf(lunation);
    return (opening.search?.evenings ?? []).flatMap((evening) => {
      const { date, q, bestMs } = evening;
      if (q === null || bestMs === null || Math.abs(q - limit) > CLOSE_Q) return [];
      const moved = openOtherwise(reckoning, opening, evening);
      const openingOf = (each: number) => (each === lunation ? moved : months.openingOf(each));
      const other = createMonths(rules, line, lunations, { openingOf, markerOf: months.markerOf });
      const about = { opens, firstDate: findFirstDate(months, lunation), date, atMs: bestMs } as const;
      return [{ reasons: [{ what: 'crescent', ...about, q, marginQ: q - limit }], other }];
    });
  });
}

/**
 * Why a marker might fall a night sooner, or later; null where it cannot. A rising star is in doubt by a night both ways,
 * however far it stood from the height that counts: haze and hills do as much to the eye.
 */
function findMarkerReason({ rules, line, months }: Reckoning, year: number, isSooner: boolean) {
  const { onOrAfter } = rules.yearBegins;
  const { day, atMs, rising } = months.markerOf(year);
  if (onOrAfter.kind === 'rising' && rising !== null) {
    const { starAltitudeDegrees } = (isSooner && rising.morningBefore) || rising.morning;
    const marginDegrees = Math.abs(starAltitudeDegrees - onOrAfter.starAltitudeDegrees);
    return { what: 'rising', star: onOrAfter.star.name, marginDegrees } as const;
  }
  const near = atMs === null ? null : findNearBoundary(line, rules.dayBegins, atMs);
  if (near?.boundaryMs !== line.beginningOf(isSooner ? day : line.zone.nextDay(day)).atMs) return null;
  return { what: 'year-marker', marginMinutes: near.minutes, isUnsure: near.isUnsure } as const;
}

/** A year whose marker might fall a night sooner or later, with the year's phase on the night between. */
function listMarkerDoubts(reckoning: Reckoning, year: number): Doubt[] {
  const { rules, line, lunations, months } = reckoning;
  const marker = months.markerOf(year);
  const { first, before } = listYearPhases(reckoning, year);
  const [dayBefore, dayAfter] = [line.zone.previousDay(marker.day), line.zone.nextDay(marker.day)];
  const moves = [
    { found: first, on: marker.day, toDay: dayAfter, isSooner: false },
    { found: before, on: dayBefore, toDay: dayBefore, isSooner: true },
  ];
  return moves.flatMap(({ found: { phase, atMs }, on, toDay, isSooner }) => {
    if (line.dayHolding(atMs) !== on) return [];
    const reason = findMarkerReason(reckoning, year, isSooner);
    if (reason === null) return [];
    const markerOf = (each: number) => (each === year ? { ...marker, day: toDay } : months.markerOf(each));
    const other = createMonths(rules, line, lunations, { openingOf: months.openingOf, markerOf });
    return [{ reasons: [{ ...reason, year, markerDate: renderCivilDate(marker.day), phase, atMs }], other }];
  });
}

/**
 * What was near to falling the other way about a month: its beginning, the next one's, the phases that names are tied to,
 * and where its year and the next begin (the next year's beginning tells whether this one has thirteen months).
 */
export function listDoubts(reckoning: Reckoning, month: MonthSpan): readonly Doubt[] {
  const { year } = month.record;
  const years = [year, year + 1];
  return [
    ...listPhaseDoubts(reckoning, month, years),
    ...listCrescentDoubts(reckoning, month),
    ...years.flatMap((each) => listMarkerDoubts(reckoning, each)),
  ];
}
