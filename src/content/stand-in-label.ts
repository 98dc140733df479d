import type { NightRecord } from '../calendar/almanac-types.ts';
import type { DayBegins } from '../calendar/rules.ts';
import type { LabelKey } from './label-catalogue.ts';

const LABELS = {
  sunset: { up: 'no-sunset-here', down: 'no-sunset-sun-down' },
  sunrise: { up: 'no-sunrise-sun-up', down: 'no-sunrise-here' },
} as const satisfies Record<string, Record<string, LabelKey>>;

/** The label that says why midnight stands in for sunset or sunrise. */
export type StandInLabel = (typeof LABELS)[keyof typeof LABELS]['up' | 'down'];

/**
 * Why midnight stands in for what a night should begin with; null where it begins as it should.
 * @param dayBegins What the nights of the calendar begin with by its rule.
 */
export function findStandInLabel(
  dayBegins: DayBegins,
  { sunStays }: Pick<NightRecord, 'sunStays'>,
): StandInLabel | null {
  return dayBegins === 'midnight' || sunStays === undefined ? null : LABELS[dayBegins][sunStays];
}
