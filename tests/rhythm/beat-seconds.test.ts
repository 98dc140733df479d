import { describe, expect, it } from 'vitest';
import { computeBeatSeconds } from '../../src/rhythm/beat-seconds.ts';

describe('computeBeatSeconds', () => {
  // By hand: 6 beats of 4/3 s at 45 are 8 s, 5 beats at 60 are 5 s, then half a second a beat at 120.
  const tempi = [
    { atBeat: 0, beatsPerMinute: 45 },
    { atBeat: 6, beatsPerMinute: 60 },
    { atBeat: 11, beatsPerMinute: 120 },
  ];

  it.each([
    [0, 0],
    [3, 4],
    [6, 8],
    [7, 9],
    [11, 13],
    [13, 14],
  ])('puts beat %d at %d seconds', (beat, seconds) => {
    expect(computeBeatSeconds(tempi, beat)).toBe(seconds);
  });
});
