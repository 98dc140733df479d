import { describe, expect, it } from 'vitest';
import { mixStroke } from '../../src/rhythm/mix-stroke.ts';

describe('mixStroke', () => {
  it('adds bodies up, as long as the longest, to the peak that is asked for', () => {
    const mix = mixStroke([Float64Array.of(0, 1, -1), Float64Array.of(0, 1, 0, 0.5, 0)], 1000);
    expect([...mix]).toEqual([0, 1000, -500, 250, 0]);
  });
});
