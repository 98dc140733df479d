import { describe, expect, it } from 'vitest';
import { parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import { createNightLine } from '../../src/calendar/night-line.ts';
import type { DayBegins, Place } from '../../src/calendar/rules.ts';
import { computeStand } from '../../src/calendar/sky.ts';
import { ESTUARY, samplePlace, utc } from './sample-rules.ts';

const TROMSO = samplePlace(69.65, 18.96, 'Europe/Oslo');

function beginningsOf(dayBegins: DayBegins, place: Place, dates: readonly string[]): string[] {
  const line = createNightLine(dayBegins, place);
  return dates.map((date) => {
    const beginning = line.beginningOf(parseCivilDate(date));
    return `${line.zone.renderLocal(beginning.atMs).slice(0, 16)} ${beginning.with}`;
  });
}

describe('createNightLine', () => {
  it('begins at sunset, midnight or sunrise of the date', () => {
    // Sunset as in the design's example row, whose sunrise of the next day is 07:33:08, a minute earlier than this one.
    expect(beginningsOf('sunset', ESTUARY, ['2026-07-29'])).toEqual(['2026-07-29T17:25 sunset']);
    expect(beginningsOf('midnight', ESTUARY, ['2026-07-29'])).toEqual(['2026-07-29T00:00 midnight']);
    expect(beginningsOf('sunrise', ESTUARY, ['2026-07-29'])).toEqual(['2026-07-29T07:34 sunrise']);
  });

  it('keeps a sunset after civil midnight with the date before it, then falls back to the midnight after', () => {
    // Tromso, where the clock is about 45 minutes ahead of the Sun in summer; dates of the last sunset before the
    // midnight sun worked out from the nights themselves, the season (18 May to 26 July) from common knowledge.
    const line = createNightLine('sunset', TROMSO);
    const days = Array.from({ length: 12 }, (_, index) => parseCivilDate('2026-05-10') + index);
    const kinds = days.map((day) => line.beginningOf(day).with);
    const lastSunset = days[kinds.lastIndexOf('sunset')] ?? 0;
    expect(line.zone.dayAt(line.beginningOf(lastSunset).atMs)).toBe(lastSunset + 1);
    expect(kinds[kinds.length - 1]).toBe('midnight');
    expect(beginningsOf('sunset', TROMSO, ['2026-06-21'])).toEqual(['2026-06-22T00:00 midnight']);
  });

  it('falls back to the midnight that opens the date where the Sun does not rise', () => {
    expect(beginningsOf('sunrise', TROMSO, ['2026-12-21', '2026-12-22'])).toEqual([
      '2026-12-21T00:00 midnight',
      '2026-12-22T00:00 midnight',
    ]);
  });

  it('keeps the few minutes of day around noon on the right date when the polar night comes and goes', () => {
    for (const [from, dayBegins] of [
      ['2026-11-15', 'sunset'],
      ['2027-01-05', 'sunset'],
      ['2026-11-15', 'sunrise'],
      ['2027-01-05', 'sunrise'],
    ] as const) {
      const line = createNightLine(dayBegins, TROMSO);
      let seen = 0;
      for (let day = parseCivilDate(from); day < parseCivilDate(from) + 25; day += 1) {
        const beginning = line.beginningOf(day);
        if (beginning.with === 'midnight') continue;
        seen += 1;
        expect(line.zone.dayAt(beginning.atMs)).toBe(day);
      }
      expect(seen).toBeGreaterThan(5);
      expect(seen).toBeLessThan(25);
    }
  });

  it.each([
    ['sunset', '2026-05-25', 'up'],
    ['sunset', '2026-07-15', 'up'],
    ['sunset', '2026-12-05', 'down'],
    ['sunset', '2027-01-05', 'down'],
    ['sunrise', '2026-05-25', 'up'],
    ['sunrise', '2026-12-05', 'down'],
  ] as const)(
    'tells whether the Sun stays up or down where midnight stands in for %s: %s',
    (dayBegins, date, stays) => {
      const day = parseCivilDate(date);
      expect(createNightLine(dayBegins, TROMSO).beginningOf(day).sunStays).toBe(stays);
      expect(createNightLine('sunset', TROMSO).sunStaysOn(day)).toBe(stays);
      expect(createNightLine('midnight', TROMSO).beginningOf(day).sunStays).toBeUndefined();
    },
  );

  it.each([
    ['Tromso', TROMSO],
    ['Longyearbyen', samplePlace(78.22, 15.65, 'Arctic/Longyearbyen')],
    ['Alert', samplePlace(82.5, -62.35, 'America/Toronto')],
    ['McMurdo', samplePlace(-77.85, 166.67, 'Antarctica/McMurdo')],
  ])('says so truly to the first and the last day at %s, by the height of the Sun alone', (_, place) => {
    for (const dayBegins of ['sunset', 'sunrise'] as const) {
      const line = createNightLine(dayBegins, place);
      for (let day = parseCivilDate('2026-01-01'); day <= parseCivilDate('2026-12-31'); day += 1) {
        const { sunStays } = line.beginningOf(day);
        if (sunStays === undefined) continue;
        // From one noon to the next, after the date's for sunset and before it for sunrise.
        const noonMs = line.solarNoonOf(day) - (dayBegins === 'sunset' ? 0 : 86_400_000);
        const heights = [0, 6, 12, 18, 24].map((hour) => computeStand('sun', place, noonMs + hour * 3_600_000));
        const isHigh = heights.map(({ altitudeDegrees }) => altitudeDegrees > -0.27);
        // At the first and the last noon the Sun may just come or go.
        expect(isHigh.slice(1, -1), renderCivilDate(day)).toEqual(Array(3).fill(sunStays === 'up'));
      }
    }
  });

  it('passes over the date that Apia left out', () => {
    const apia = samplePlace(-13.8, -171.8, 'Pacific/Apia');
    const line = createNightLine('sunset', apia);
    const hours =
      (line.beginningOf(parseCivilDate('2011-12-31')).atMs - line.beginningOf(parseCivilDate('2011-12-29')).atMs) /
      3_600_000;
    expect(hours).toBeCloseTo(24, 1);
    expect(line.dayHolding(utc('2011-12-30T08:00'))).toBe(parseCivilDate('2011-12-29'));
    expect(() => line.beginningOf(parseCivilDate('2011-12-30'))).toThrow(RangeError);
  });

  it('gives Kiritimati the sunset of its own date, though its clock is a day from its Sun', () => {
    // By hand: mean noon at 157.4 W is 22:29.6 universal time, 12:29.6 by the clock; the Sun is 7.5 minutes late on this
    // day and sets 6 h 3.5 min after its noon: 18:40.6.
    expect(beginningsOf('sunset', samplePlace(1.87, -157.4, 'Pacific/Kiritimati'), ['2026-03-20'])).toEqual([
      '2026-03-20T18:40 sunset',
    ]);
  });

  it('answers at the poles, where the Sun sets once a year', () => {
    for (const [latitude, month] of [
      [90, '09'],
      [-90, '03'],
    ] as const) {
      const line = createNightLine('sunset', samplePlace(latitude, 0, 'UTC'));
      const days = Array.from({ length: 365 }, (_, index) => parseCivilDate('2026-01-01') + index);
      const sunsets = days.filter((day) => line.beginningOf(day).with === 'sunset');
      expect(sunsets.length).toBe(1);
      expect(line.zone.renderLocal(line.beginningOf(sunsets[0] ?? 0).atMs).slice(5, 7)).toBe(month);
    }
  });
});
