import type { NightLine } from './night-line.ts';
import type { InstantMs } from './rules.ts';

const MS_PER_MINUTE = 60_000;

/** The nearer boundary of a night. */
export interface NightMargin {
  readonly boundaryMs: InstantMs;
  /** To a tenth. */
  readonly minutes: number;
}

/** How far an instant lies from the nearer boundary of the night that holds it. */
export function computeNightMargin(line: NightLine, atMs: InstantMs): NightMargin {
  const day = line.dayHolding(atMs);
  const beginsMs = line.beginningOf(day).atMs;
  const endsMs = line.beginningOf(line.zone.nextDay(day)).atMs;
  const boundaryMs = atMs - beginsMs <= endsMs - atMs ? beginsMs : endsMs;
  return { boundaryMs, minutes: computeMinutesApart(atMs, boundaryMs) };
}

/** Minutes between two instants, to a tenth. */
export function computeMinutesApart(oneMs: InstantMs, otherMs: InstantMs): number {
  return Math.round(Math.abs(oneMs - otherMs) / (MS_PER_MINUTE / 10)) / 10;
}
