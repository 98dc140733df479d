import { expect } from 'vitest';

/**
 * Upper critical values of the chi-square distribution at 0.001, by degrees of freedom: NIST/SEMATECH e-Handbook of
 * Statistical Methods, section 1.3.6.7.4 (typed in from memory; those up to 11 agree with the rounded ones of table A6 in
 * Baron, "Probability and Statistics for Computer Scientists").
 */
const CHI_SQUARE_0_001: Readonly<Record<number, number>> = {
  2: 13.816,
  3: 16.266,
  4: 18.467,
  5: 20.515,
  10: 29.588,
  11: 31.264,
  22: 48.268,
  23: 49.728,
};

/** Refuses counts that chance alone would give less than once in a thousand times. Seeds are fixed, so a test passes always or never. */
export function expectUniform(counts: Iterable<number>): void {
  const all = [...counts];
  const limit = CHI_SQUARE_0_001[all.length - 1];
  if (limit === undefined) throw new Error(`The table has no row for ${all.length - 1} degrees of freedom.`);
  const expected = all.reduce((sum, count) => sum + count, 0) / all.length;
  // The distribution holds well where each count is expected to be 5 at least (common practice, no source).
  expect(expected).toBeGreaterThanOrEqual(5);
  const chiSquare = all.reduce((sum, count) => sum + (count - expected) ** 2 / expected, 0);
  expect(chiSquare).toBeLessThan(limit);
}

/** Adds one to a count. */
export function countUp<Key>(counts: Map<Key, number>, key: Key): void {
  counts.set(key, (counts.get(key) ?? 0) + 1);
}
