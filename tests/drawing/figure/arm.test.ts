import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type Arm, armLimits, hangElbow, mirrorArm, solveArm } from '../../../src/drawing/figure/arm.ts';
import { body } from '../../../src/drawing/figure/body.ts';
import { seeGesture } from '../../../src/drawing/figure/see-gesture.ts';
import { across, dot, lengthOf, subtract, unit, type Vector } from '../../../src/drawing/figure/vector.ts';
import { makeFrame, measureWrist, wristLimits } from '../../../src/drawing/figure/wrist.ts';
import { anyGesture } from './any-gesture.ts';

const DEGREES = 180 / Math.PI;
const angleBetween = (one: Vector, other: Vector) =>
  Math.acos(Math.max(-1, Math.min(1, dot(unit(one), unit(other))))) * DEGREES;

/** What joints show, each worked out anew from the places of the joints. */
const measureArm = ({ side, shoulder, elbow, wrist, hand }: Arm) => {
  const axis = unit(subtract(wrist, shoulder));
  const { bend, sideways } = measureWrist(unit(subtract(wrist, elbow)), hand);
  return {
    upperArm: lengthOf(subtract(elbow, shoulder)),
    forearm: lengthOf(subtract(wrist, elbow)),
    elbow: angleBetween(subtract(shoulder, elbow), subtract(wrist, elbow)),
    swivel: angleBetween(across(subtract(elbow, shoulder), axis), across(hangElbow(side, wrist), axis)),
    bend,
    sideways,
  };
};

const expectWithinLimits = (arm: Arm): void => {
  const found = measureArm(arm);
  expect(found.upperArm).toBeCloseTo(body.upperArm, 6);
  expect(found.forearm).toBeCloseTo(body.forearm, 6);
  expect(found.elbow).toBeGreaterThan(armLimits.elbowDegrees.least - 1e-6);
  expect(found.elbow).toBeLessThan(armLimits.elbowDegrees.most + 1e-6);
  expect(found.swivel).toBeLessThan(armLimits.swivelDegrees + 1e-6);
  expect(Math.abs(found.bend)).toBeLessThan(wristLimits.bendDegrees + 1e-6);
  expect(Math.abs(found.sideways)).toBeLessThan(wristLimits.sidewaysDegrees + 1e-6);
};

describe('the joints of a figure', () => {
  it('stay within their limits, whatever is written', () => {
    fc.assert(
      fc.property(anyGesture, fc.constantFrom('standing', 'seated'), (gesture, posture) => {
        const { arms, seconds } = seeGesture(gesture, 'front', posture);
        for (const { placed } of [...arms, ...seconds]) expectWithinLimits(placed.arm);
      }),
      { numRuns: 1000 },
    );
  });

  it('keep the elbow on the outer side of the body’s middle, and below the crown', () => {
    fc.assert(
      fc.property(anyGesture, (gesture) => {
        for (const { placed } of seeGesture(gesture, 'front', 'standing').arms) {
          const { elbow, side } = placed.arm;
          expect(side === 'left' ? elbow[0] : -elbow[0]).toBeGreaterThan(10);
          expect(elbow[1]).toBeGreaterThan(60);
        }
      }),
    );
  });
});

const coordinate = fc.double({ min: -400, max: 400, noNaN: true });
const forward = makeFrame('left', [0, 0, 1], [0, 1, 0]);

describe('solveArm', () => {
  it('keeps lengths and limits for a hand anywhere, within reach or not', () => {
    fc.assert(
      fc.property(coordinate, coordinate, coordinate, (x, y, z) => {
        expectWithinLimits(solveArm('left', [x, y, z], forward, 20));
      }),
    );
  });

  it('solves a hand at the shoulder itself', () => {
    expectWithinLimits(solveArm('left', [body.shoulder.x, body.shoulder.y, 24], forward, 0));
  });

  it('brings the hand where it was asked to be, when that is within reach', () => {
    const { wrist, hand } = solveArm('left', [60, 220, 60], forward, 0);
    expect(hand.fingers).toEqual([0, 0, 1]);
    expect(wrist).toEqual([60, 220, 36]);
  });

  it('lets the arm of a hand in front of the waist hang: the elbow is below the shoulder and behind the hand', () => {
    const { elbow, wrist } = solveArm('left', [40, 220, 70], forward, 0);
    expect(elbow[1]).toBeGreaterThan(body.shoulder.y + 30);
    expect(elbow[2]).toBeLessThan(wrist[2]);
  });

  it('turns a hand that the wrist cannot reach as far as it goes', () => {
    // Fingers up, palm to the front, beside the thigh: a straight arm cannot bend its hand back on itself.
    const { hand, elbow, wrist } = solveArm('left', [60, 300, 0], makeFrame('left', [0, -1, 0], [0, 0, 1]), 0);
    const { bend, sideways } = measureWrist(unit(subtract(wrist, elbow)), hand);
    expect(
      Math.max(Math.abs(bend) / wristLimits.bendDegrees, Math.abs(sideways) / wristLimits.sidewaysDegrees),
    ).toBeCloseTo(1, 6);
  });
});

describe('mirrorArm', () => {
  it('gives the other arm, and the first one when done twice', () => {
    const arm = solveArm('left', [60, 220, 60], forward, 0);
    expect(mirrorArm(arm).side).toBe('right');
    expect(mirrorArm(arm).wrist).toEqual([-60, 220, 36]);
    expect(mirrorArm(mirrorArm(arm))).toEqual(arm);
  });
});
