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
      const months = findMonthsOfYear(almanac, year) ?? [];
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
    const months = findMonthsOfYear(almanac, 2011) ?? [];
    const december = months.find(({ from, to }) => from <= '2011-12-30' && '2011-12-30' <= to);
    if (december === undefined) throw new Error('No month holds the date.');
    expect(december.to).toBe(addDays(december.from, december.month.length));
  });

  it('has no year that is not wholly covered', () => {
    const almanac = createAlmanac(sampleRules({ yearBegins: YEAR_OF_A_DATE }), ESTUARY);
    expect(findMonthsOfYear(almanac, Number(LAST_DATE.slice(0, 4)))).toBeUndefined();
    // The year of 2199 ends in the first days of 2201.
    expect(findMonthsOfYear(almanac, Number(LAST_DATE.slice(0, 4)) - 1)).toBeUndefined();
    expect(findMonthsOfYear(almanac, Number(LAST_DATE.slice(0, 4)) - 2)).toBeDefined();
    expect(findMonthsOfYear(almanac, Number(FIRST_DATE.slice(0, 4)) - 1)).toBeUndefined();
    expect(findMonthsOfYear(almanac, Number(FIRST_DATE.slice(0, 4)))).toBeDefined();
  });
});
