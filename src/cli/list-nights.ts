import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import { NoNightError } from '../calendar/no-night-error.ts';
import type { CivilDate } from '../calendar/rules.ts';
import { addDays } from '../content/civil-date.ts';
import type { DateRange } from '../pack/year-months.ts';
import type { Terminal } from './terminal.ts';

/** Dates in a row whose night cannot be told, for one reason. */
interface UntoldStretch extends DateRange {
  readonly why: string;
}

/** Dates without a night, as they are passed over. */
export interface PassedOver {
  /** Dates that the clocks of the place left out. */
  readonly leftOut: CivilDate[];
  readonly untold: UntoldStretch[];
}

/**
 * Night by night, so that a hundred years need no more memory than one.
 * @param passedOver Gets the dates that have no night.
 */
export function* listNights(
  almanac: Almanac,
  ranges: readonly DateRange[],
  passedOver: PassedOver,
): Generator<NightRecord> {
  for (const { from, to } of ranges) {
    for (let date = from; date <= to; date = addDays(date, 1)) {
      const night = findNight(almanac, date, passedOver.untold);
      if (night === 'left-out') passedOver.leftOut.push(date);
      else if (night !== 'untold') yield night;
    }
  }
}

function findNight(almanac: Almanac, date: CivilDate, untold: UntoldStretch[]): NightRecord | 'left-out' | 'untold' {
  try {
    const [night] = almanac.nights(date, date);
    return night ?? 'left-out';
  } catch (error) {
    if (!(error instanceof NoNightError)) throw error;
    addUntold(untold, date, error.message);
    return 'untold';
  }
}

function addUntold(untold: UntoldStretch[], date: CivilDate, why: string): void {
  const last = untold.at(-1);
  if (last !== undefined && last.why === why && last.to === addDays(date, -1)) {
    untold.splice(-1, 1, { ...last, to: date });
  } else untold.push({ from: date, to: date, why });
}

/** A line a stretch. */
export function tellUntold(untold: readonly UntoldStretch[], terminal: Terminal): void {
  for (const { from, to, why } of untold) {
    const dates = from === to ? from : `${from} to ${to}`;
    terminal.tell(`lessontide: no night can be told for ${dates}. ${why}`);
  }
}

/** A line a date. */
export function tellLeftOut(dates: readonly CivilDate[], timeZone: string, terminal: Terminal): void {
  for (const date of dates)
    terminal.tell(`lessontide: ${date} was left out by the clocks of ${timeZone}; it has no night`);
}
