/** A time of day `HH:MM` some minutes later; past midnight it starts again at 00:00. */
export function addMinutes(clock: string, minutes: number): string {
  const total = (Number(clock.slice(0, 2)) * 60 + Number(clock.slice(3)) + minutes) % (24 * 60);
  return `${String(Math.floor(total / 60)).padStart(2, '0')}:${String(total % 60).padStart(2, '0')}`;
}
