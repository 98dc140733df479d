import fc from 'fast-check';
import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { requireCivilZone } from '../../src/calendar/civil.ts';
import { parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import { utc } from './sample-rules.ts';

/** Zones with odd habits: half hours, quarter hours, changes at midnight, dates left out or said twice, no change. */
const ZONES = [
  'Pacific/Auckland',
  'Pacific/Chatham',
  'Pacific/Apia',
  'Pacific/Kiritimati',
  'Pacific/Kwajalein',
  'Australia/Lord_Howe',
  'Asia/Kathmandu',
  'Asia/Gaza',
  'Africa/Casablanca',
  'Africa/Monrovia',
  'America/Sao_Paulo',
  'America/St_Johns',
  'Europe/Dublin',
  'Europe/Paris',
  '+08:00',
  'UTC',
] as const;

function startsOf(timeZone: string, dates: readonly string[]) {
  const zone = requireCivilZone(timeZone);
  return dates.map((date) => {
    const startMs = zone.findStartOfDay(parseCivilDate(date));
    return startMs === null ? null : zone.renderLocal(startMs);
  });
}

describe('requireCivilZone', () => {
  // The dates of the changes below are those of the IANA time zone database, quoted from memory.
  it('knows that Apia left out 2011-12-30', () => {
    expect(startsOf('Pacific/Apia', ['2011-12-29', '2011-12-30', '2011-12-31'])).toEqual([
      '2011-12-29T00:00:00-10:00',
      null,
      '2011-12-31T00:00:00+14:00',
    ]);
    const zone = requireCivilZone('Pacific/Apia');
    expect(renderCivilDate(zone.nextDay(parseCivilDate('2011-12-29')))).toBe('2011-12-31');
    expect(renderCivilDate(zone.previousDay(parseCivilDate('2011-12-31')))).toBe('2011-12-29');
  });

  it('knows that Kiritimati left out 1994-12-31', () => {
    const starts = startsOf('Pacific/Kiritimati', ['1994-12-30', '1994-12-31', '1995-01-01']);
    expect(starts).toEqual(['1994-12-30T00:00:00-10:00', null, '1995-01-01T00:00:00+14:00']);
  });

  it('keeps Chatham three quarters of an hour ahead of Auckland, summer and winter', () => {
    const [chatham, auckland] = [requireCivilZone('Pacific/Chatham'), requireCivilZone('Pacific/Auckland')];
    for (const instant of [utc('2026-01-15T00:00'), utc('2026-07-15T00:00')]) {
      expect(chatham.offsetMsAt(instant) - auckland.offsetMsAt(instant)).toBe(45 * 60_000);
    }
    expect(chatham.renderLocal(utc('2026-07-15T00:00'))).toBe('2026-07-15T12:45:00+12:45');
  });

  it('follows Auckland into daylight saving (2026-09-27) and out of it (2026-04-05)', () => {
    const zone = requireCivilZone('Pacific/Auckland');
    expect(zone.renderLocal(utc('2026-09-26T13:59:59'))).toBe('2026-09-27T01:59:59+12:00');
    expect(zone.renderLocal(utc('2026-09-26T14:00'))).toBe('2026-09-27T03:00:00+13:00');
    expect(zone.renderLocal(utc('2026-04-04T13:59:59'))).toBe('2026-04-05T02:59:59+13:00');
    expect(zone.renderLocal(utc('2026-04-04T14:00'))).toBe('2026-04-05T02:00:00+12:00');
    const hours = ['2026-04-05', '2026-09-27', '2026-09-28'].map((date) => {
      const day = parseCivilDate(date);
      return ((zone.findStartOfDay(day + 1) ?? 0) - (zone.findStartOfDay(day) ?? 0)) / 3_600_000;
    });
    expect(hours).toEqual([25, 23, 24]);
  });

  it('starts a date at one in the morning where midnight was skipped', () => {
    expect(startsOf('America/Sao_Paulo', ['2018-11-04'])).toEqual(['2018-11-04T01:00:00-02:00']);
  });

  it('floors local times to what a clock shows', () => {
    const zone = requireCivilZone('Pacific/Auckland');
    const almost = utc('2026-07-29T05:25:41') + 999;
    expect([zone.renderLocal(almost), zone.renderClock(almost)]).toEqual(['2026-07-29T17:25:41+12:00', '17:25']);
    expect(zone.renderClock(utc('1960-01-01T00:00') - 0.5)).toBe('11:59');
  });

  it('prints mean times of odd seconds with the nearest whole-minute offset, the same instant', () => {
    // Monrovia kept -0:43:08 until 1919: tz database, from memory.
    const instant = utc('1905-06-01T12:00');
    const zone = requireCivilZone('Africa/Monrovia');
    expect(zone.renderLocal(instant)).toBe('1905-06-01T11:17:00-00:43');
    expect(zone.renderClock(instant)).toBe('11:16');
    expect(Temporal.Instant.from(zone.renderLocal(instant)).epochMilliseconds).toBe(instant);
  });

  it('agrees with Temporal on offset, date and start of date at any instant from 1900 to 2100', () => {
    const instants = fc.integer({ min: utc('1900-01-01T00:00'), max: utc('2100-12-31T00:00') });
    const check = (timeZone: string, instantMs: number) => {
      const zone = requireCivilZone(timeZone);
      const expected = Temporal.Instant.fromEpochMilliseconds(instantMs).toZonedDateTimeISO(timeZone);
      expect(zone.offsetMsAt(instantMs)).toBe(expected.offsetNanoseconds / 1e6);
      expect(renderCivilDate(zone.dayAt(instantMs))).toBe(expected.toPlainDate().toString());
      expect(zone.findStartOfDay(zone.dayAt(instantMs))).toBe(expected.startOfDay().epochMilliseconds);
    };
    fc.assert(fc.property(fc.constantFrom(...ZONES), instants, check), { numRuns: 1500 });
  });

  it.each(ZONES)('agrees with Temporal on either side of every change of %s from 2005 to 2030', (timeZone) => {
    const zone = requireCivilZone(timeZone);
    let at = Temporal.Instant.fromEpochMilliseconds(utc('2005-01-01T00:00')).toZonedDateTimeISO(timeZone);
    for (;;) {
      const before = [-1, 0, 1].map((shift) => zone.offsetMsAt(at.epochMilliseconds + shift));
      const expected = [-1, 0, 1].map((shift) => at.add({ milliseconds: shift }).offsetNanoseconds / 1e6);
      expect(before).toEqual(expected);
      const next = at.getTimeZoneTransition('next');
      if (!next || next.year > 2030) break;
      at = next;
    }
  });

  it.each(['Mars/Olympus', '', 'Pacific/Aukland'])('refuses `%s`', (timeZone) => {
    expect(() => requireCivilZone(timeZone)).toThrow(`Unexpected time zone \`${timeZone}\``);
  });
});
