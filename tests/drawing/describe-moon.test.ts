import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { describeMoon } from '../../src/drawing/describe-moon.ts';

describe('describeMoon', () => {
  it.each([
    ['a waxing crescent in the north, lit towards the set Sun', 0.2, 250, true, 'crescent', 'right'],
    ['a waxing crescent in the south', 0.2, 110, true, 'crescent', 'left'],
    ['a waxing crescent near the equator, lying on its back', 0.1, 178, true, 'crescent', 'bottom'],
    ['a waning half in the north', 0.48, 95, false, 'half', 'left'],
    ['a waning half in the south', 0.52, 265, false, 'half', 'right'],
    ['a waxing gibbous low in the east, lit from above', 0.8, 20, true, 'gibbous', 'top'],
    ['a gibbous lit aslant', 0.8, 315, true, 'gibbous', 'top-right'],
    ['an angle just short of a full turn', 0.3, 359.9, true, 'crescent', 'top'],
    ['an angle below 0', 0.3, -90, true, 'crescent', 'right'],
  ])('describes %s', (_title, litFraction, brightLimbDegrees, waxing, shape, litSide) => {
    expect(describeMoon({ litFraction, brightLimbDegrees, waxing })).toEqual({ shape, litSide, waxing });
  });

  it.each([
    [0, 'dark'],
    [0.01, 'dark'],
    [0.99, 'full'],
    [1, 'full'],
  ])('names no lit side at %d', (litFraction, shape) => {
    expect(describeMoon({ litFraction, brightLimbDegrees: 12, waxing: false })).toEqual({ shape, waxing: false });
  });

  it('gives the opposite side for the opposite direction', () => {
    const opposite = { top: 'bottom', left: 'right', bottom: 'top', right: 'left' } as const;
    fc.assert(
      fc.property(fc.constantFrom(0, 90, 180, 270), fc.integer({ min: -22, max: 22 }), (quarter, off) => {
        const sideAt = (brightLimbDegrees: number) => {
          const description = describeMoon({ litFraction: 0.3, brightLimbDegrees, waxing: true });
          return 'litSide' in description ? description.litSide : undefined;
        };
        const side = sideAt(quarter + off);
        if (side !== 'top' && side !== 'left' && side !== 'bottom' && side !== 'right') throw new Error(`got ${side}`);
        expect(sideAt(quarter + off + 180)).toBe(opposite[side]);
      }),
    );
  });

  it('refuses an angle that is no number', () => {
    expect(() => describeMoon({ litFraction: 0.5, brightLimbDegrees: Number.NaN, waxing: true })).toThrow(RangeError);
  });
});
