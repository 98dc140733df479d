import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { addDays, FIRST_DATE, LAST_DATE } from '../../src/content/civil-date.ts';
import { findMonthsOfYear } from '../../src/pack/year-months.ts';
import { ESTUARY, samplePlace, sampleRules } from '../calendar/sample-rules.ts';

const YEAR_OF_A_DATE = { phase: 'new-moon', onOrAfter: { kind: 'date', monthDay: '12-25' } } as const;

describe('findMonthsOfYear', () => {
  it.each([
    ['a solstice at a sunset place', sampleRules(), ESTUARY],
    ['a date at the end of the civil year', sampleRules({ yearBegins: YEAR_OF_A_DATE }), ESTUARY],
    [
      'an equinox at a midnight place',
      sampleRules({
        dayBegins: 'midnight',
        monthBegins: { at: 'full-moon', offset: -2 },
        yearBegins: { phase: 'first-quarter', onOrAfter: { kind: 'equinox', month: 'march' } },
      }),
      samplePlace(25, 121, 'Asia/Taipei'),
    ],
  ] as const)('finds years that follow without gap: %s', (_, rules, place) => {
    const almanac = createAlmanac(rules, place);
    let next: string | undefined;
    for (let year = 2020; year < 2026; year += 1) {
      const months = findMonthsOfYear(almanac, year).months;
      expect([12, 13]).toContain(months.length);
      expect(months.map(({ month }) => month.number)).toEqual(months.map((_month, index) => index + 1));
      for (const { month, from, to } of months) {
        expect(month.year).toBe(year);
        if (next !== undefined) expect(from).toBe(next);
        expect(almanac.nightOn(to).nightOfMonth).toBe(month.length);
        next = addDays(to, 1);
      }
    }
  });

  it('goes over a date that the place left out', () => {
    const almanac = createAlmanac(sampleRules(), samplePlace(-13.8, -171.8, 'Pacific/Apia'));
    const months = findMonthsOfYear(almanac, 2011).months;
    const december = months.find(({ from, to }) => from <= '2011-12-30' && '2011-12-30' <= to);
    if (december === undefined) throw new Error('No month holds the date.');
    expect(december.to).toBe(addDays(december.from, december.month.length));
  });

  it('says which years are not wholly covered, and gives the months that are', () => {
    const almanac = createAlmanac(sampleRules({ yearBegins: YEAR_OF_A_DATE }), ESTUARY);
    const [firstYear, lastYear] = [FIRST_DATE, LAST_DATE].map((date) => Number(date.slice(0, 4))) as [number, number];
    const isWhole = (year: number) => findMonthsOfYear(almanac, year).isWhole;
    // The year of 2199 ends in the first days of 2201.
    expect([lastYear, lastYear - 1, lastYear - 2].map(isWhole)).toEqual([false, false, true]);
    expect([firstYear - 1, firstYear].map(isWhole)).toEqual([false, true]);
    const { months } = findMonthsOfYear(almanac, lastYear - 1);
    expect(months[0]?.month.number).toBe(1);
    expect(months.at(-1)?.to.slice(0, 7)).toBe(`${lastYear}-12`);
    const early = findMonthsOfYear(almanac, firstYear - 1).months;
    expect(early.at(-1)?.month.number).toBeGreaterThan(11);
    expect(early[0] && early[0].from >= FIRST_DATE && early[0].month.number > 1).toBe(true);
    expect(findMonthsOfYear(almanac, lastYear + 1)).toEqual({ months: [], gaps: [], isWhole: false });
  });

  const CRESCENT = {
    monthBegins: { at: 'first-crescent', offset: 0 },
    yearBegins: { phase: 'new-moon', onOrAfter: { kind: 'equinox', month: 'march' } },
  } as const;

  it('gives the dates whose months cannot be told, no farther than the year may reach', () => {
    const almanac = createAlmanac(sampleRules(CRESCENT), samplePlace(65, 18.96, 'Europe/Stockholm'));
    const { months, gaps, isWhole } = findMonthsOfYear(almanac, 2026);
    expect(isWhole).toBe(true);
    expect(months.map(({ month }) => month.number)).toEqual([9, 10, 11, 12]);
    const [before, after] = gaps;
    expect(gaps).toHaveLength(2);
    expect(addDays(before?.to ?? '', 1)).toBe(months[0]?.from);
    // The year begins with the new Moon of 17 April; eight months before its ninth are 248 days at the most.
    expect(before?.from).toBe('2026-04-18');
    expect(after).toEqual({ from: addDays(months.at(-1)?.to ?? '', 1), to: addDays(months.at(-1)?.to ?? '', 31) });
    for (const { from, to } of gaps) {
      for (const date of [from, to]) expect(() => almanac.nightOn(date)).toThrow('cannot be told');
    }
  });

  it('stands for the civil year where no month of it can be told', () => {
    const almanac = createAlmanac(sampleRules(CRESCENT), samplePlace(-90, 0, 'UTC'));
    const gaps = [{ from: '2026-01-01', to: '2026-12-31' }];
    expect(findMonthsOfYear(almanac, 2026)).toEqual({ months: [], gaps, isWhole: true });
  });
});
