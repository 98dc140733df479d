/**
 * Writes the time since the beginning as a clock does, `m:ss`: 5.83 seconds is `0:05`, an hour and a half is `90:00`.
 * @param seconds 0 or more; parts of a second are cut off, as a running clock shows them
 * @throws RangeError when the number is negative or not finite
 */
export function formatElapsed(seconds: number): string {
  if (!(Number.isFinite(seconds) && seconds >= 0)) {
    throw new RangeError(`elapsed seconds must be a number from 0, not ${seconds}`);
  }
  const whole = Math.floor(seconds);
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, '0')}`;
}
