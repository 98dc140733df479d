import type { DayNumber } from './day-number.ts';
import type { NightLine } from './night-line.ts';

/** Moves a date by whole nights, over existing dates only. */
export function moveNights(line: NightLine, day: DayNumber, nights: number): DayNumber {
  let moved = day;
  for (let left = nights; left > 0; left -= 1) moved = line.zone.nextDay(moved);
  for (let left = nights; left < 0; left += 1) moved = line.zone.previousDay(moved);
  return moved;
}
