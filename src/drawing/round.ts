/**
 * Rounds a number for a drawing, so that the same picture has the same bytes on any machine.
 * @param value any finite number
 * @param places decimal places to keep, 0 to 6
 * @returns the nearest such number, never -0
 */
export function roundTo(value: number, places: number): number {
  const unit = 10 ** places;
  const rounded = Math.round(value * unit) / unit;
  return rounded === 0 ? 0 : rounded;
}
