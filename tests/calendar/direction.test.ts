import { describe, expect, it } from 'vitest';
import { computeTurnDegrees, normaliseDegrees, type Vector3 } from '../../src/calendar/direction.ts';
import { MEEUS } from '../reference/meeus.ts';

function fromEquatorial({ rightAscension, declination }: { rightAscension: number; declination: number }): Vector3 {
  const [ra, dec] = [(rightAscension * Math.PI) / 180, (declination * Math.PI) / 180];
  return [Math.cos(dec) * Math.cos(ra), Math.cos(dec) * Math.sin(ra), Math.sin(dec)];
}

describe('computeTurnDegrees', () => {
  it('gives the position angle of the bright limb of Meeus, example 48.a', () => {
    // The book prints a tenth of a degree.
    const { sun, moon, brightLimb } = MEEUS.moon1992;
    const turn = computeTurnDegrees(fromEquatorial(moon), [0, 0, 1], fromEquatorial(sun));
    expect(Math.abs(turn - brightLimb)).toBeLessThan(0.05);
  });

  it('turns counter-clockwise: facing south with north up, east is left at 90, west is right at 270', () => {
    // East, north and up as axes; looking south at the horizon.
    const south: Vector3 = [0, -5, 0];
    expect(computeTurnDegrees(south, [0, 0, 1], [1, 0, 0])).toBeCloseTo(90, 10);
    expect(computeTurnDegrees(south, [0, 0, 1], [-1, 0, 0])).toBeCloseTo(270, 10);
    expect(computeTurnDegrees(south, [0, 0, 1], [0, 1, -1])).toBeCloseTo(180, 10);
  });

  it('is 0 where there is no direction', () => {
    expect(computeTurnDegrees([0, 0, 1], [0, 0, 1], [1, 0, 0])).toBe(0);
  });
});

describe('normaliseDegrees', () => {
  it('stays from 0 to below 360', () => {
    expect([-90, 0, 360, 725, -1e-20].map(normaliseDegrees)).toEqual([270, 0, 0, 5, 0]);
  });
});
