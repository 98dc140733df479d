import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import type { NightRecord } from '../../src/calendar/almanac-types.ts';
import { MS_PER_DAY, parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';
import type { CalendarRules, Place } from '../../src/calendar/rules.ts';
import { ESTUARY, samplePlace, sampleRules, utc } from './sample-rules.ts';

const PLACES: [string, Place][] = [
  ['the estuary', ESTUARY],
  ['Chatham', samplePlace(-43.9, -176.5, 'Pacific/Chatham')],
  ['Apia', samplePlace(-13.8, -171.8, 'Pacific/Apia')],
  ['Kiritimati', samplePlace(1.9, -157.4, 'Pacific/Kiritimati')],
  ['Kwajalein', samplePlace(8.7, 167.7, 'Pacific/Kwajalein')],
  ['48 N', samplePlace(48, 2, 'Europe/Paris')],
  ['a clock three hours ahead of the Sun', samplePlace(39.5, 76, 'Asia/Shanghai')],
  ['69.65 N', samplePlace(69.65, 18.96, 'Europe/Oslo')],
  ['78 S', samplePlace(-77.8, 166.7, 'Antarctica/McMurdo')],
  ['the North Pole', samplePlace(90, 0, 'UTC')],
];

const RULES: [string, CalendarRules][] = [
  ['sunset', sampleRules()],
  ['midnight', sampleRules({ dayBegins: 'midnight', monthBegins: { at: 'full-moon', offset: 0 } })],
  ['sunrise', sampleRules({ dayBegins: 'sunrise', monthBegins: { at: 'conjunction', offset: 2 } })],
];

const CASES = PLACES.flatMap(([where, place]) =>
  RULES.map(([begins, rules]) => [begins, where, createAlmanac(rules, place)] as const),
);

const ALMANACS = CASES.map(([, , almanac]) => almanac);
const ESTUARY_ALMANAC = createAlmanac(sampleRules(), ESTUARY);

const anyDate = fc
  .integer({ min: parseCivilDate('1800-01-01'), max: parseCivilDate('2200-12-31') })
  .map((day) => renderCivilDate(day));

describe('nights', () => {
  // The years hold dates left out in Apia (2011), Kiritimati (1994) and Kwajalein (1993), and one said twice (1969).
  it.each(CASES)('begin with %s and tile time at %s', (_, __, almanac) => {
    for (const [from, to] of [
      ['1969-09-10', '1969-11-10'],
      ['1993-08-01', '1993-10-01'],
      ['1994-12-10', '1995-02-10'],
      ['2011-12-10', '2012-02-10'],
    ] as const) {
      let before: NightRecord | undefined;
      for (const record of almanac.nights(from, to)) {
        expect(record.endsMs).toBeGreaterThan(record.beginsMs);
        if (before) {
          expect(record.beginsMs).toBe(before.endsMs);
          expect(record.date > before.date).toBe(true);
          if (record.nightOfMonth === 1) expect(before.nightOfMonth).toBe(before.month.length);
          else expect(record).toMatchObject({ nightOfMonth: before.nightOfMonth + 1, month: before.month });
        }
        if (record.nightOfMonth === 1) expect(record.month.firstDate).toBe(record.date);
        before = record;
      }
      expect(before?.date).toBe(to);
    }
  });

  it('have months of 29 or 30 nights from 1900 to 2100, at sunset and at midnight', () => {
    for (const dayBegins of ['sunset', 'midnight'] as const) {
      const almanac = createAlmanac(sampleRules({ dayBegins }), ESTUARY);
      const lengths = new Set<number>();
      for (let date = '1900-01-15'; date < '2100-12-01'; ) {
        const { month } = almanac.nightOn(date);
        lengths.add(month.length);
        date = renderCivilDate(parseCivilDate(month.firstDate) + month.length);
      }
      expect([...lengths].sort()).toEqual([29, 30]);
    }
  });

  it('are one to a date, and hold their own instants', () => {
    const check = (date: string, which: number) => {
      const almanac = ALMANACS[which % ALMANACS.length] ?? ESTUARY_ALMANAC;
      if (/^(2011-12-30|1994-12-31|1993-08-2[01])$/.test(date)) return;
      const record = almanac.nightOn(date);
      expect(record.date).toBe(date);
      for (const instant of [record.beginsMs, Math.floor((record.beginsMs + record.endsMs) / 2), record.endsMs - 1]) {
        expect(almanac.nightAt(instant)).toEqual(record);
      }
      expect(record.night).toBe(almanac.run[Math.min(record.nightOfMonth, 30) - 1]);
    };
    fc.assert(fc.property(anyDate, fc.nat(), check), { numRuns: 400 });
  });

  it('come out the same from memory and afresh', () => {
    const kept = ESTUARY_ALMANAC;
    const check = (date: string) => {
      const record = kept.nightOn(date);
      const fresh = createAlmanac(sampleRules(), ESTUARY);
      for (const almanac of [kept, fresh]) {
        expect(almanac.nightOn(date)).toEqual(record);
        expect(almanac.skyOf(record)).toEqual(kept.skyOf(record));
        expect(almanac.moonBestSeen(record)).toEqual(kept.moonBestSeen(record));
        expect(almanac.moonHighest(record)).toEqual(kept.moonHighest(record));
      }
      expect(kept.nightOn(date)).toBe(kept.nightOn(date));
      expect(kept.skyOf(record)).toBe(kept.skyOf(record));
    };
    fc.assert(fc.property(anyDate, check), { numRuns: 60 });
  });

  it('are forgotten in the course of a century, and come back the same', () => {
    const almanac = createAlmanac(sampleRules({ dayBegins: 'midnight' }), ESTUARY);
    const first = almanac.nightOn('1950-01-01');
    let count = 0;
    for (const record of almanac.nights('1950-01-01', '2049-12-31')) count += record.date ? 1 : 0;
    expect(count).toBe(36_525);
    const again = almanac.nightOn('1950-01-01');
    expect(again).toEqual(first);
    expect(again).not.toBe(first);
  });
});

describe('daylight saving', () => {
  it('makes midnight nights of 23 and 25 hours and leaves sunset nights alone', () => {
    const hours = (dayBegins: CalendarRules['dayBegins'], date: string) => {
      const { beginsMs, endsMs } = createAlmanac(sampleRules({ dayBegins }), ESTUARY).nightOn(date);
      return (endsMs - beginsMs) / 3_600_000;
    };
    expect(hours('midnight', '2026-09-27')).toBe(23);
    expect(hours('midnight', '2026-04-05')).toBe(25);
    for (const date of ['2026-09-26', '2026-09-27', '2026-04-04', '2026-04-05']) {
      expect(hours('sunset', date)).toBeCloseTo(24, 1);
    }
  });
});

describe('a month that crosses the ends', () => {
  const almanac = createAlmanac(sampleRules(), ESTUARY);

  it('gives all nights of the month, in order', () => {
    const nights = almanac.nightsOfMonth('2026-07-29');
    expect(nights.map(({ nightOfMonth }) => nightOfMonth)).toEqual(Array.from({ length: 29 }, (_, index) => index + 1));
    expect([nights[0]?.date, nights[28]?.date]).toEqual(['2026-07-14', '2026-08-11']);
  });

  it('crosses New Year and a leap day', () => {
    expect(almanac.nightsOfMonth('2024-01-01').some(({ date }) => date === '2023-12-31')).toBe(true);
    expect(almanac.nightOn('2024-02-29').nightOfMonth).toBe(almanac.nightOn('2024-02-28').nightOfMonth + 1);
  });

  it('answers for the first and last date', () => {
    expect(almanac.nightOn('1800-01-01').date).toBe('1800-01-01');
    expect(almanac.nightOn('2200-12-31').endsMs).toBeGreaterThan(utc('2201-01-01T00:00'));
    expect(almanac.nightsOfMonth('2200-12-31').length).toBeGreaterThan(28);
    expect(almanac.nightsOfMonth('1800-01-01').length).toBeGreaterThan(28);
  });
});

describe('names', () => {
  it('repeat the last one past the end of a short list', () => {
    const groups = [{ name: 'Only', nights: [{ name: 'One' }, { name: 'Two' }] }];
    const nights = createAlmanac(sampleRules({ groups }), ESTUARY).nightsOfMonth('2026-07-29');
    expect(nights.map(({ night }) => night.name).slice(0, 4)).toEqual(['One', 'Two', 'Two', 'Two']);
    expect(nights.map(({ repeat }) => repeat).slice(0, 4)).toEqual([false, false, true, true]);
  });

  it('past the end of a month wait for a longer one', () => {
    const groups = [{ name: 'Long', nights: Array.from({ length: 31 }, (_, index) => ({ name: `N${index + 1}` })) }];
    const almanac = createAlmanac(sampleRules({ groups }), ESTUARY);
    expect(almanac.run.length).toBe(31);
    expect(almanac.nightsOfMonth('2026-07-29').at(-1)?.night.name).toBe('N29');
  });
});

describe('what cannot be answered', () => {
  const estuary = createAlmanac(sampleRules(), ESTUARY);
  const apia = createAlmanac(sampleRules(), samplePlace(-13.8, -171.8, 'Pacific/Apia'));

  it.each(['1799-12-31', '2201-01-01', '2025-02-30', 'tomorrow', ''])('is refused: date `%s`', (date) => {
    expect(() => estuary.nightOn(date)).toThrow(RangeError);
    expect(() => estuary.nightOn(date)).toThrow(`Unexpected date \`${date}\`, expected`);
    expect(() => estuary.nightsOfMonth(date)).toThrow(RangeError);
    expect(() => estuary.nights(date, '2026-01-01')).toThrow(RangeError);
    expect(() => estuary.nights('2026-01-01', date)).toThrow(RangeError);
  });

  it('is refused: a date that the place left out, but not as the end of a range', () => {
    expect(() => apia.nightOn('2011-12-30')).toThrow('did not leave out');
    expect([...apia.nights('2011-12-29', '2011-12-31')].map(({ date }) => date)).toEqual(['2011-12-29', '2011-12-31']);
    expect([...apia.nights('2011-12-30', '2011-12-30')]).toEqual([]);
    expect([...apia.nights('2011-12-30', '2011-12-31')].map(({ date }) => date)).toEqual(['2011-12-31']);
  });

  it('has a night for an instant a few days beside them, and is refused further off', () => {
    const first = estuary.nightOn('1800-01-01');
    const last = estuary.nightOn('2200-12-31');
    expect(estuary.nightAt(first.beginsMs)).toBe(first);
    expect(estuary.nightAt(first.beginsMs - 1)).toMatchObject({ date: '1799-12-31', endsMs: first.beginsMs });
    expect(estuary.nightAt(last.endsMs - 1)).toBe(last);
    expect(estuary.nightAt(last.endsMs)).toMatchObject({ date: '2201-01-01', beginsMs: last.endsMs });
    expect(() => estuary.nightAt(first.beginsMs - 4 * MS_PER_DAY)).toThrow('Unexpected instant');
    expect(() => estuary.nightAt(last.endsMs + 4 * MS_PER_DAY)).toThrow('Unexpected instant');
    expect(() => estuary.nightAt(last.endsMs + 400_000 * MS_PER_DAY)).toThrow('Unexpected instant');
    for (const instant of [Number.NaN, Number.POSITIVE_INFINITY, -9e15]) {
      expect(() => estuary.nightAt(instant)).toThrow(`Unexpected instant \`${instant}\``);
    }
  });

  it('is nothing: a range that ends before it begins', () => {
    expect([...estuary.nights('2026-07-02', '2026-07-01')]).toEqual([]);
  });

  it.each([
    ['latitude', {}, samplePlace(91, 0, 'UTC')],
    ['latitude', {}, samplePlace(Number.NaN, 0, 'UTC')],
    ['longitude', {}, samplePlace(0, 181, 'UTC')],
    ['elevation', {}, { ...ESTUARY, elevationMetres: 20_000 }],
    ['time zone', {}, samplePlace(0, 0, 'Mars/Olympus')],
    ['offset', { monthBegins: { at: 'conjunction', offset: 0.5 } }, ESTUARY],
    ['count of night names', { groups: [] }, ESTUARY],
    ['count of month names', { months: [{ name: 'Only' }] }, ESTUARY],
    ['date', { yearBegins: { phase: 'new-moon', onOrAfter: { kind: 'date', monthDay: '02-30' } } }, ESTUARY],
  ] as [string, Partial<CalendarRules>, Place][])('is refused: a wrong %s', (what, changes, place) => {
    expect(() => createAlmanac(sampleRules(changes), place)).toThrow(RangeError);
    expect(() => createAlmanac(sampleRules(changes), place)).toThrow(`Unexpected ${what}`);
  });

  it('is refused: a night that a clock twelve hours from the Sun would squeeze out', () => {
    // New York's clock at 110 E: 11.7 hours from the Sun in winter, 12.7 in summer.
    const odd = createAlmanac(sampleRules(), samplePlace(30, 110, 'America/New_York'));
    expect(() => [...odd.nights('2026-03-01', '2026-03-15')]).toThrow('no night of its own on 2026-03-');
  });
});
