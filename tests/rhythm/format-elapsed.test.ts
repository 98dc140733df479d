import { describe, expect, it } from 'vitest';
import { formatElapsed } from '../../src/rhythm/format-elapsed.ts';

describe('formatElapsed', () => {
  it.each([
    [0, '0:00'],
    [5.83, '0:05'],
    [59.999, '0:59'],
    [60, '1:00'],
    [61.2, '1:01'],
    [600, '10:00'],
    [5400, '90:00'],
  ])('writes %d seconds as %s', (seconds, written) => {
    expect(formatElapsed(seconds)).toBe(written);
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('refuses %d', (seconds) => {
    expect(() => formatElapsed(seconds)).toThrow(RangeError);
  });
});
