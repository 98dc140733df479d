import { describe, expect, it } from 'vitest';
import { addDays, FIRST_DATE, LAST_DATE } from '../../../src/content/civil-date.ts';
import { computeSpan } from '../../../src/directives/questions/compute-span.ts';
import { openSetting } from './open-setting.ts';

const { almanac, school } = openSetting('2026-07-29');

function spanOf(span: 'month' | 'term' | 'year', date: string) {
  return computeSpan(span, almanac.nightOn(date), almanac, school.terms);
}

describe('the month of a date', () => {
  it.each(['2026-07-14', '2026-07-29', '2026-08-11'])('%s', (date) => {
    expect(spanOf('month', date)).toEqual({ from: '2026-07-14', to: '2026-08-11' });
  });
});

describe('the term of a date', () => {
  it.each(['2026-07-20', '2026-08-30', '2026-09-25'])('%s lies in one', (date) => {
    expect(spanOf('term', date)).toEqual({ from: '2026-07-20', to: '2026-09-25' });
  });

  it.each(['2026-07-19', '2026-09-26'])('%s lies in none', (date) => {
    expect(spanOf('term', date)).toBeUndefined();
  });
});

describe('the year of a date', () => {
  it('begins and ends where the number of the year changes, whatever the length', () => {
    const lengths = new Set<number>();
    for (let year = 2020; year < 2030; year++) {
      const date = `${year}-11-05`;
      const span = spanOf('year', date);
      if (span === undefined) throw new Error('A date lies in a year.');
      const nights = [...almanac.nights(span.from, span.to)];
      const own = almanac.nightOn(date).month.year;
      expect(new Set(nights.map(({ month }) => month.year))).toEqual(new Set([own]));
      expect(almanac.nightOn(addDays(span.from, -1)).month.year).toBe(own - 1);
      expect(almanac.nightOn(addDays(span.to, 1)).month.year).toBe(own + 1);
      expect(spanOf('year', span.from)).toEqual(span);
      expect(spanOf('year', span.to)).toEqual(span);
      lengths.add(new Set(nights.map(({ month }) => month.firstDate)).size);
    }
    expect([...lengths].sort()).toEqual([12, 13]);
  });
});

describe('at the ends of the calendar', () => {
  it('no date lies outside of it', () => {
    expect(spanOf('month', FIRST_DATE)?.from).toBe(FIRST_DATE);
    expect(spanOf('year', '1800-01-20')?.from).toBe(FIRST_DATE);
    expect(spanOf('month', LAST_DATE)?.to).toBe(LAST_DATE);
    expect(spanOf('year', '2200-12-20')?.to).toBe(LAST_DATE);
    const terms = [{ name: 'Term', from: '1799-01-01', to: '2201-01-01' }];
    expect(computeSpan('term', almanac.nightOn('2026-07-29'), almanac, terms)).toEqual({
      from: FIRST_DATE,
      to: LAST_DATE,
    });
  });
});
