import type { Almanac, NightRecord } from '../../src/calendar/almanac-types.ts';
import type { NightExplanation } from '../../src/calendar/explanation.ts';

/** Changes to parts of an explanation. */
export interface ExplanationChanges extends Partial<Omit<NightExplanation, 'month' | 'year' | 'name'>> {
  readonly month?: Partial<NightExplanation['month']>;
  readonly year?: Partial<NightExplanation['year']>;
  readonly name?: Partial<NightExplanation['name']>;
}

/** The explanation of a computed night of a month that begins with the conjunction; parts may be changed. */
export function explainRecord(
  { skyOf, nightOn, rules }: Pick<Almanac, 'skyOf' | 'nightOn' | 'rules'>,
  record: NightRecord,
  changes: ExplanationChanges = {},
): NightExplanation {
  const { month } = record;
  const first = nightOn(month.firstDate);
  const opening = skyOf(first).phase;
  if (opening === null) throw new Error(`No phase opens the month of ${record.date}.`);
  const { month: monthChanges, year, name, ...rest } = changes;
  return {
    date: record.date,
    beginsMs: record.beginsMs,
    endsMs: record.endsMs,
    dayBegins: rules.dayBegins,
    beginsWith: record.beginsWith,
    night: record.night,
    repeat: record.repeat,
    nightOfMonth: record.nightOfMonth,
    month: {
      ...{ name: month.name, number: month.number, year: month.year, intercalary: month.intercalary },
      ...{ length: month.length, firstDate: month.firstDate, computedFirstDate: month.firstDate },
      basis: { kind: 'rule' },
      ending: null,
      opening: rules.monthBegins,
      openingPhase: opening,
      openingDate: month.firstDate,
      openingMarginMinutes: (opening.atMs - first.beginsMs) / 60_000,
      openingBoundaryMs: first.beginsMs,
      crescents: [],
      visibility: null,
      ...monthChanges,
    },
    year: {
      phase: rules.yearBegins.phase,
      phaseAtMs: opening.atMs,
      marker: rules.yearBegins.onOrAfter,
      markerDate: '2026-06-21',
      markerAtMs: Date.UTC(2026, 5, 21, 8, 24, 30),
      ...year,
    },
    name: { by: 'counting', observation: null, anchors: [], ...name },
    phase: skyOf(record).phase,
    closeCall: false,
    closeCalls: [],
    ...rest,
  };
}
