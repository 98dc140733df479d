/**
 * Mixes bodies that are struck at once.
 * @param peak the largest size of a sample, up to 32,767
 * @returns samples of 16 bit, as many as the longest body has
 */
export function mixStroke(bodies: readonly Float64Array[], peak: number): Int16Array {
  const mix = new Float64Array(bodies.reduce((longest, { length }) => Math.max(longest, length), 0));
  for (const body of bodies) {
    for (let index = 0; index < body.length; index++) mix[index] = (mix[index] ?? 0) + (body[index] ?? 0);
  }
  let largest = 0;
  for (let index = 0; index < mix.length; index++) largest = Math.max(largest, Math.abs(mix[index] ?? 0));
  const stroke = new Int16Array(mix.length);
  for (let index = 0; index < mix.length; index++) stroke[index] = Math.round(((mix[index] ?? 0) * peak) / largest);
  return stroke;
}
