import { describe, expect, it } from 'vitest';
import { requireCivilZone } from '../../src/calendar/civil.ts';
import { requireLocalInstant } from '../../src/calendar/local-instant.ts';

/** Known answers: offsets and changes of the IANA time zone database, from memory; each date's change is named. */
const KNOWN = [
  ['Pacific/Auckland', '2026-07-29', '09:00', '2026-07-29T09:00:00+12:00'],
  // Clocks go forward at 02:00: half past two is skipped and stands for half past three.
  ['Pacific/Auckland', '2026-09-27', '02:30', '2026-09-27T03:30:00+13:00'],
  ['Pacific/Auckland', '2026-09-27', '09:00', '2026-09-27T09:00:00+13:00'],
  // Clocks go back at 03:00: half past two comes twice, first in summer time.
  ['Pacific/Auckland', '2026-04-05', '02:30', '2026-04-05T02:30:00+13:00'],
  ['Pacific/Auckland', '2026-04-05', '09:00', '2026-04-05T09:00:00+12:00'],
  // Midnight itself is skipped.
  ['America/Sao_Paulo', '2018-11-04', '09:00', '2018-11-04T09:00:00-02:00'],
  ['America/Sao_Paulo', '2018-11-04', '00:15', '2018-11-04T01:15:00-02:00'],
  ['Pacific/Chatham', '2026-07-29', '08:45', '2026-07-29T08:45:00+12:45'],
  // The day after the one that Samoa left out.
  ['Pacific/Apia', '2011-12-31', '09:00', '2011-12-31T09:00:00+14:00'],
] as const;

describe('requireLocalInstant', () => {
  it.each(KNOWN)('%s %s %s', (zone, date, clock, expected) => {
    expect(requireCivilZone(zone).renderLocal(requireLocalInstant(zone, date, clock))).toBe(expected);
  });

  it('refuses a date that the zone left out', () => {
    expect(() => requireLocalInstant('Pacific/Apia', '2011-12-30', '09:00')).toThrow(RangeError);
  });
});
