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

  it('shows the seconds of local mean time too: midnight is midnight', () => {
    // Oslo kept the local mean time of Berlin in the zone data, 53 minutes 28 seconds ahead of universal time, until 1893.
    const midnightMs = Date.UTC(1800, 0, 1) - (53 * 60 + 28) * 1000;
    expect(readWallClock(midnightMs, 'Arctic/Longyearbyen')).toEqual({ date: '1800-01-01', clock: '00:00' });
    expect(readWallClock(midnightMs - 1, 'Arctic/Longyearbyen')).toEqual({ date: '1799-12-31', clock: '23:59' });
  });

  it('refuses a zone that is not known', () => {
    expect(() => readWallClock(INSTANT, 'Pacific/Nowhere')).toThrow(RangeError);
  });
});
