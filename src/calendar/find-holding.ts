/**
 * Of stretches that follow each other without gap and are numbered in order, the one that holds a point: it begins at or
 * before the point, the next one after it.
 * @param near The number of a stretch nearby; the nearer, the fewer are looked at.
 * @param beginningOf Where the stretch of a number begins; later for higher numbers.
 */
export function findHolding(point: number, near: number, beginningOf: (number: number) => number): number {
  let number = near;
  while (beginningOf(number) > point) number -= 1;
  while (beginningOf(number + 1) <= point) number += 1;
  return number;
}
