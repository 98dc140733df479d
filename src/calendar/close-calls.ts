import { type CrescentReport, findClassLimit } from './crescent.ts';
import type { CloseCall } from './explanation.ts';
import type { Lunations } from './lunations.ts';
import { DEFAULT_VISIBILITY } from './month-openings.ts';
import type { MonthSpan, Months } from './months.ts';
import type { NightLine } from './night-line.ts';
import type { CalendarRules, InstantMs } from './rules.ts';

/**
 * A phase within an hour of the boundary of its night is a close call. An hour holds the doubt in the sky (two minutes
 * for the Moon, some minutes for refraction and the height of the horizon), the few minutes from a school to its
 * keeper's place, and the twilight by which people may mean sunset or dark.
 */
const CLOSE_MINUTES = 60;

/** A crescent this near to the limit of its class; Yallop's classes overlap by more in his own list of sightings. */
const CLOSE_Q = 0.05;

const MS_PER_MINUTE = 60_000;

/** The nearer boundary of a night. */
export interface NightMargin {
  readonly boundaryMs: InstantMs;
  readonly minutes: number;
}

/** How far an instant lies from the nearer boundary of the night that holds it. */
export function computeNightMargin(line: NightLine, atMs: InstantMs): NightMargin {
  const day = line.dayHolding(atMs);
  const beginsMs = line.beginningOf(day).atMs;
  const endsMs = line.beginningOf(line.zone.nextDay(day)).atMs;
  const boundaryMs = atMs - beginsMs <= endsMs - atMs ? beginsMs : endsMs;
  return { boundaryMs, minutes: roundTenth(Math.abs(atMs - boundaryMs) / MS_PER_MINUTE) };
}

function roundTenth(value: number): number {
  return Math.round(value * 10) / 10;
}

function listCloseCrescents(evenings: readonly CrescentReport[], limit: number): CloseCall[] {
  return evenings.flatMap(({ date, q }) =>
    q !== null && Math.abs(q - limit) <= CLOSE_Q ? [{ what: 'crescent' as const, date, q, marginQ: q - limit }] : [],
  );
}

/** Whether another first night of a month was near; none where a record gave it. */
function listOpeningCalls(rules: CalendarRules, line: NightLine, months: Months, lunation: number): CloseCall[] {
  if (months.findBeginning(lunation)?.record) return [];
  const { phaseMs, search } = months.openingOf(lunation);
  const limit = findClassLimit(rules.monthBegins.visibility ?? DEFAULT_VISIBILITY);
  if (search) return listCloseCrescents(search.evenings, limit);
  const { minutes } = computeNightMargin(line, phaseMs);
  return minutes <= CLOSE_MINUTES ? [{ what: 'opening-phase', marginMinutes: minutes }] : [];
}

/**
 * Whether the end of the month was near to being another, and this night or its name with it. Names before the last
 * night depend on the length only where flexible ones are fitted, and then from the last anchor on.
 */
function listEndingCalls(
  rules: CalendarRules,
  line: NightLine,
  months: Months,
  month: MonthSpan,
  index: number,
): CloseCall[] {
  const isFlexible = rules.groups.some(({ nights }) => nights.some(({ flexible }) => flexible === true));
  const lastAnchor = Math.max(0, ...month.anchors.map((anchor) => anchor.index));
  const hangsOnEnd = index === month.days.length - 1 || (isFlexible && index >= lastAnchor);
  return hangsOnEnd ? listOpeningCalls(rules, line, months, month.lunation + 1) : [];
}

/** Whether another first month of a year was near: the phase on the marker's own night, or on the night before it. */
function listYearCalls(
  rules: CalendarRules,
  line: NightLine,
  lunations: Lunations,
  months: Months,
  year: number,
): CloseCall[] {
  const { phase, onOrAfter } = rules.yearBegins;
  const marker = months.markerOf(year);
  const lunation = months.phaseLunationOf(months.firstMonthOf(year));
  const phases = [lunation, lunation - 1].map((each) => lunations.phaseInstant(each, phase));
  const near = phases.find((atMs) => {
    const nights = line.dayHolding(atMs) - marker.day;
    if (nights !== 0 && nights !== -1) return false;
    // A date does not move, so that only the phase is in doubt.
    const minutes = Math.abs(atMs - line.beginningOf(marker.day).atMs) / MS_PER_MINUTE;
    return onOrAfter.kind !== 'date' || minutes <= CLOSE_MINUTES;
  });
  if (near === undefined) return [];
  const calls: CloseCall[] = [{ what: 'year-marker', marginNights: line.dayHolding(near) - marker.day }];
  if (!marker.rising || onOrAfter.kind !== 'rising') return calls;
  const { morning, morningBefore } = marker.rising;
  const offs = [morning, morningBefore].flatMap((each) =>
    each ? [Math.abs(each.starAltitudeDegrees - onOrAfter.starAltitudeDegrees)] : [],
  );
  return [...calls, { what: 'rising', marginDegrees: Math.min(...offs) }];
}

/** The next year's beginning tells whether this year has thirteen months, and so the names after the thirteenth's place. */
function listYearsInDoubt(rules: CalendarRules, { record }: MonthSpan): readonly number[] {
  const after = rules.thirteenthMonth?.after ?? 12;
  return record.number > after || record.number >= 12 ? [record.year, record.year + 1] : [record.year];
}

/** An anchor's phase near the boundary of its night, unless an observation named the night. */
function listAnchorCalls(line: NightLine, month: MonthSpan, index: number): CloseCall[] {
  const isObserved = month.seen.some((seen) => seen.index <= index);
  if (isObserved) return [];
  return month.anchors.flatMap(({ atMs, phase }) => {
    const { minutes } = computeNightMargin(line, atMs);
    return minutes <= CLOSE_MINUTES ? [{ what: 'anchor' as const, phase, marginMinutes: minutes }] : [];
  });
}

/** The calls that were close on the way to a night: those to check by eye, or to ask the keeper about. */
export function listCloseCalls(
  rules: CalendarRules,
  line: NightLine,
  lunations: Lunations,
  months: Months,
  month: MonthSpan,
  index: number,
): readonly CloseCall[] {
  return [
    ...listOpeningCalls(rules, line, months, month.lunation),
    ...listEndingCalls(rules, line, months, month, index),
    ...listAnchorCalls(line, month, index),
    ...listYearsInDoubt(rules, month).flatMap((year) => listYearCalls(rules, line, lunations, months, year)),
  ];
}
