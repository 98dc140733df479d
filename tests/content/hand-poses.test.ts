import { describe, expect, it } from 'vitest';
import { completeThen, splitHands } from '../../src/content/hand-poses.ts';
import type { HandPose } from '../../src/content/types.ts';

const OPEN: HandPose = { shape: 'open', at: 'chest', palm: 'up', fingers: 'in' };
const FIST: HandPose = { shape: 'fist', at: 'low', palm: 'in', fingers: 'front' };

describe('splitHands', () => {
  it('gives each hand its pose', () => {
    expect(splitHands({ both: OPEN })).toEqual({ left: OPEN, right: OPEN });
    expect(splitHands({ left: OPEN, right: FIST })).toEqual({ left: OPEN, right: FIST });
    expect(splitHands({ right: FIST })).toEqual({ right: FIST });
    expect(splitHands({})).toEqual({});
  });
});

describe('completeThen', () => {
  it('says what each hand does when both move', () => {
    const moved = { ...OPEN, at: 'side' };
    expect(completeThen({ both: OPEN }, { both: { at: 'side' } })).toEqual({ left: moved, right: moved });
  });

  it('lets a hand that is not named stay as it was', () => {
    expect(completeThen({ both: OPEN }, { left: { palm: 'down' } })).toEqual({
      left: { ...OPEN, palm: 'down' },
      right: OPEN,
    });
    expect(completeThen({ left: OPEN, right: FIST }, { right: OPEN })).toEqual({ left: OPEN, right: OPEN });
  });

  it('changes the same of two hands that differ', () => {
    expect(completeThen({ left: OPEN, right: FIST }, { both: { at: 'face' } })).toEqual({
      left: { ...OPEN, at: 'face' },
      right: { ...FIST, at: 'face' },
    });
  });

  it('lets a hand at rest join, and one rest that is never named', () => {
    expect(completeThen({ left: OPEN }, { right: FIST })).toEqual({ left: OPEN, right: FIST });
    expect(completeThen({ left: OPEN }, { left: { shape: 'fist' } })).toEqual({ left: { ...OPEN, shape: 'fist' } });
  });
});
