import type { RunNight } from './almanac-types.ts';
import { type DayNumber, parseCivilDate } from './day-number.ts';
import type { CalendarRules, CivilDate, Observation } from './rules.ts';

/** Something that was seen or announced, ready for use. */
export type SkyRecord =
  | { readonly kind: 'announced'; readonly day: DayNumber; readonly date: CivilDate }
  | {
      readonly kind: 'observation';
      readonly day: DayNumber;
      readonly observation: Observation;
      readonly night: RunNight;
    };

/**
 * The records of a calendar, the weightier later: announced months first, then observations, each in the order given.
 * @throws RangeError for a date that is not real or a night that the calendar does not have.
 */
export function listRecords(
  rules: Pick<CalendarRules, 'observations' | 'announcedMonths'>,
  run: readonly RunNight[],
): readonly SkyRecord[] {
  const announced = rules.announcedMonths.map((date) => ({
    kind: 'announced' as const,
    day: parseCivilDate(date),
    date,
  }));
  const seen = rules.observations.map((observation) => {
    const night = run.find(({ name }) => name === observation.night);
    if (night === undefined) {
      const advice = 'expected the name of a night of the calendar, use one of its names';
      throw new RangeError(`Unexpected night \`${observation.night}\` on ${observation.date}, ${advice}.`);
    }
    return { kind: 'observation' as const, day: parseCivilDate(observation.date), observation, night };
  });
  return [...announced, ...seen];
}

/** Whether a record says by itself that a month begins. */
export function opensMonth(record: SkyRecord): boolean {
  return record.kind === 'announced' || record.night.number === 1;
}
