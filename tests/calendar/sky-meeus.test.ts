import { describe, expect, it } from 'vitest';
import { MS_PER_DAY } from '../../src/calendar/day-number.ts';
import { normaliseDegrees } from '../../src/calendar/direction.ts';
import { computeMoonPose, computeSeason } from '../../src/calendar/sky.ts';
import { brightLimbFromZenith } from '../reference/meeus-sky.ts';
import { samplePlace, utc } from './sample-rules.ts';

describe('equinoxes and solstices', () => {
  // Meeus, Astronomical Algorithms (2nd edition), table 27.E, dynamical time to the second, from memory; delta T from
  // table 10.A: 62 s in 1996, 65 s in 2005.
  it.each([
    [1996, 62, ['1996-03-20T08:04:07', '1996-06-21T02:24:46', '1996-09-22T18:01:08', '1996-12-21T14:06:56']],
    [2005, 65, ['2005-03-20T12:34:29', '2005-06-21T06:47:12', '2005-09-22T22:24:14', '2005-12-21T18:36:01']],
  ] as const)('of %d are those of Meeus', (year, deltaTSeconds, printed) => {
    for (const [index, month] of (['march', 'june', 'september', 'december'] as const).entries()) {
      const expected = utc(printed[index] ?? '') - deltaTSeconds * 1000;
      // The engine is one arc minute, 24 minutes of time. Seen: 15 s. A minute leaves room.
      expect(Math.abs(computeSeason(year, month) - expected), `${month} ${year}`).toBeLessThan(60_000);
    }
  });
});

describe('the parallactic angle', () => {
  it.each([
    [-41.1, 174.2],
    [48.2, 5.1],
    [1.3, 103.8],
  ])('turns the bright limb as by Meeus, chapters 14 and 48, at %d, %d', (latitude, longitude) => {
    const place = samplePlace(latitude, longitude, 'UTC');
    let compared = 0;
    for (let hours = 0; hours < 24 * 28; hours += 7) {
      const atMs = utc('2026-07-17T00:00') + hours * 3_600_000;
      const pose = computeMoonPose(place, atMs);
      // Near new and full Moon the limb turns on a hair's breadth, near the zenith the sky does.
      if (pose.altitudeDegrees < 0 || pose.altitudeDegrees > 80 || pose.litFraction < 0.03 || pose.litFraction > 0.97) {
        continue;
      }
      const { brightLimb, parallacticAngle } = brightLimbFromZenith(
        atMs / MS_PER_DAY + 2440587.5,
        69,
        latitude,
        longitude,
      );
      const apart = Math.abs(normaliseDegrees(pose.brightLimbDegrees - brightLimb + 180) - 180);
      expect(apart, `${hours} h`).toBeLessThan(0.3);
      // East of the meridian the hour angle is negative, and with it the parallactic angle (chapter 14).
      expect(parallacticAngle < 0).toBe(pose.azimuthDegrees < 180);
      compared += 1;
    }
    expect(compared).toBeGreaterThan(30);
  });
});
