import { describe, expect, it } from 'vitest';
import { readWallClock } from '../../src/calendar/wall-clock.ts';

const INSTANT = Date.UTC(2026, 6, 29, 14, 36, 59);

describe('readWallClock', () => {
  it.each([
    ['UTC', '2026-07-29', '14:36'],
    ['Pacific/Auckland', '2026-07-30', '02:36'],
    ['Pacific/Chatham', '2026-07-30', '03:21'],
    ['America/Los_Angeles', '2026-07-29', '07:36'],
  ])('in %s it is %s, %s', (timeZone, date, clock) => {
    expect(readWallClock(INSTANT, timeZone)).toEqual({ date, clock });
  });

  it('refuses a zone that is not known', () => {
    expect(() => readWallClock(INSTANT, 'Pacific/Nowhere')).toThrow(RangeError);
  });
});
