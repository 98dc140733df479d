import { describe, expect, it } from 'vitest';
import { findLongest, listUp } from '../../src/calendar/above-horizon.ts';
import { computeStand } from '../../src/calendar/sky.ts';
import { ESTUARY, samplePlace, utc } from './sample-rules.ts';

const DAY_MS = 86_400_000;

describe('listUp', () => {
  it('gives the stretches in order, cut at the ends of the time looked at, and up in between', () => {
    const within = { fromMs: utc('2026-07-01T00:00'), untilMs: utc('2026-07-11T00:00') };
    for (const body of ['sun', 'moon'] as const) {
      const stretches = listUp(body, ESTUARY, within);
      expect(stretches.length).toBeGreaterThanOrEqual(10);
      let beforeMs = within.fromMs;
      for (const { fromMs, untilMs } of stretches) {
        expect(fromMs).toBeGreaterThanOrEqual(beforeMs);
        expect(untilMs).toBeGreaterThan(fromMs);
        expect(computeStand(body, ESTUARY, (fromMs + untilMs) / 2).altitudeDegrees).toBeGreaterThan(0);
        if (fromMs > beforeMs)
          expect(computeStand(body, ESTUARY, (beforeMs + fromMs) / 2).altitudeDegrees).toBeLessThan(0);
        beforeMs = untilMs;
      }
      expect(beforeMs).toBeLessThanOrEqual(within.untilMs);
    }
  });

  it.each([
    // Searched for once with this kit: the Moon passes its lowest point with its centre below the horizon, its limb above.
    ['Tromso', samplePlace(69.65, 18.96, 'Europe/Oslo'), '2026-03-28T08:00'],
    ['Longyearbyen', samplePlace(78.22, 15.65, 'Arctic/Longyearbyen'), '2026-01-07T19:00'],
    ['Alert', samplePlace(82.5, -62.35, 'America/Toronto'), '2026-03-19T09:00'],
    ['McMurdo', samplePlace(-77.85, 166.67, 'Antarctica/McMurdo'), '2026-01-21T18:00'],
  ])('has a Moon up that skims the horizon at %s without setting', (_, place, from) => {
    const within = { fromMs: utc(from), untilMs: utc(from) + 2 * 3_600_000 };
    const { altitudeDegrees } = computeStand('moon', place, within.fromMs);
    // Refracted; the Moon's radius is 0.25 to 0.28 degrees.
    expect(altitudeDegrees).toBeLessThan(0);
    expect(altitudeDegrees).toBeGreaterThan(-0.25);
    expect(listUp('moon', place, within)).toEqual([within]);
  });

  it('is all or nothing where the Sun neither rises nor sets', () => {
    const place = samplePlace(78, 15, 'UTC');
    const june = { fromMs: utc('2026-06-21T00:00'), untilMs: utc('2026-06-22T00:00') };
    expect(listUp('sun', place, june)).toEqual([june]);
    const december = { fromMs: utc('2026-12-21T00:00'), untilMs: utc('2026-12-22T00:00') };
    expect(listUp('sun', place, december)).toEqual([]);
  });
});

describe('findLongest', () => {
  it('is the first of the longest, or null', () => {
    const [first, longer, same] = [
      { fromMs: 0, untilMs: 1 },
      { fromMs: 2, untilMs: 2 + DAY_MS },
      { fromMs: 3 + DAY_MS, untilMs: 3 + 2 * DAY_MS },
    ];
    expect(findLongest([first, longer, same])).toBe(longer);
    expect(findLongest([])).toBeNull();
  });
});
