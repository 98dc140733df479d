import type { NightRecord } from './almanac-types.ts';
import { listCloseCalls } from './close-calls.ts';
import { type DayNumber, parseCivilDate, renderCivilDate } from './day-number.ts';
import type { Reckoning } from './doubt-types.ts';
import { listDoubts } from './doubts.ts';
import type { MonthEnding, NightExplanation } from './explanation.ts';
import type { Lunations } from './lunations.ts';
import { createMemo } from './memo.ts';
import { DEFAULT_VISIBILITY } from './month-openings.ts';
import type { MonthSpan } from './month-span.ts';
import type { Months } from './months.ts';
import { findPhaseWithin } from './moon-seen.ts';
import type { NightLine } from './night-line.ts';
import { computeNightMargin } from './night-margin.ts';
import type { SkyRecord } from './records.ts';
import type { CalendarRules } from './rules.ts';

function describeRecord(record: SkyRecord): MonthEnding['basis'] {
  return record.kind === 'announced'
    ? { kind: 'announced', date: record.date }
    : { kind: 'observation', observation: record.observation };
}

function describeEnding(months: Months, month: MonthSpan): MonthEnding | null {
  const { days, foreseenLength, lunation } = month;
  const next = months.findBeginning(lunation + 1)?.record ?? null;
  if (next === null || days.length === foreseenLength) return null;
  return { basis: describeRecord(next), foreseenLength };
}

function renderDay(day: DayNumber | null) {
  return day === null ? null : renderCivilDate(day);
}

function explainMonth(
  rules: CalendarRules,
  line: NightLine,
  months: Months,
  month: MonthSpan,
): NightExplanation['month'] {
  const { name, number, year, intercalary, length, firstDate } = month.record;
  const opening = months.openingOf(month.lunation);
  const { boundaryMs, minutes } = computeNightMargin(line, opening.phaseMs);
  const record = months.findBeginning(month.lunation)?.record ?? null;
  const { at, visibility = DEFAULT_VISIBILITY } = rules.monthBegins;
  return {
    ...{ name, number, year, intercalary, length, firstDate },
    computedFirstDate: renderDay(opening.firstDay),
    basis: record === null ? { kind: 'rule' } : describeRecord(record),
    ending: describeEnding(months, month),
    opening: rules.monthBegins,
    openingPhase: { name: at === 'full-moon' ? 'full-moon' : 'new-moon', atMs: opening.phaseMs },
    openingDate: renderCivilDate(opening.phaseDay),
    openingMarginMinutes: minutes,
    openingBoundaryMs: boundaryMs,
    crescents: opening.search?.evenings ?? [],
    visibility: at === 'first-crescent' ? visibility : null,
  };
}

function explainYear(
  rules: CalendarRules,
  lunations: Lunations,
  months: Months,
  { record }: MonthSpan,
): NightExplanation['year'] {
  const { phase, onOrAfter } = rules.yearBegins;
  const marker = months.markerOf(record.year);
  const lunation = months.phaseLunationOf(months.firstMonthOf(record.year));
  return {
    phase,
    phaseAtMs: lunations.phaseInstant(lunation, phase),
    marker: onOrAfter,
    markerDate: renderCivilDate(marker.day),
    markerAtMs: marker.atMs,
  };
}

function explainName(line: NightLine, month: MonthSpan, index: number, runLength: number): NightExplanation['name'] {
  const night = month.names[index]?.night;
  const observation = month.seen.findLast((seen) => seen.index <= index)?.observation ?? null;
  // Anchors that others or an observation outrank did not decide.
  const held = month.anchors.filter((anchor) => month.names[anchor.index]?.night.number === anchor.night.number);
  const isCounted = night?.number === Math.min(index + 1, runLength);
  const isAnchored = held.some((anchor) => anchor.index === index) || (held.length > 0 && !isCounted);
  return {
    by: observation ? 'observation' : isAnchored ? 'anchor' : 'counting',
    observation,
    anchors: held.map(({ night: { name }, phase, day, atMs }) => ({
      ...{ night: name, phase, date: renderCivilDate(day), atMs },
      marginMinutes: computeNightMargin(line, atMs).minutes,
    })),
  };
}

/** A lesson week lies in one month or two. */
const MONTHS_KEPT = 3;

/** Makes what gives the chain from sky to name for a night of a calendar. */
export function createExplainer(reckoning: Reckoning): (record: NightRecord) => NightExplanation {
  const { rules, line, lunations, months } = reckoning;
  const doubtsOf = createMemo(MONTHS_KEPT, (month: MonthSpan) => listDoubts(reckoning, month));
  return (record) => {
    const day = parseCivilDate(record.date);
    const month = months.monthOf(day);
    const { date, beginsMs, endsMs, beginsWith, sunStays, night, repeat, nightOfMonth } = record;
    const closeCalls = listCloseCalls(doubtsOf(month), month, day);
    return {
      ...{ date, beginsMs, endsMs, beginsWith, night, repeat, nightOfMonth },
      dayBegins: rules.dayBegins,
      ...(sunStays !== undefined && { sunStays }),
      month: explainMonth(rules, line, months, month),
      year: explainYear(rules, lunations, months, month),
      name: explainName(line, month, nightOfMonth - 1, months.run.length),
      phase: findPhaseWithin(lunations, { fromMs: beginsMs, untilMs: endsMs }),
      closeCall: closeCalls.length > 0,
      closeCalls,
    };
  };
}
