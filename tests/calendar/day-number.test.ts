import { Temporal } from 'temporal-polyfill';
import { describe, expect, it } from 'vitest';
import { computeDateParts, dayNumberOf, parseCivilDate, renderCivilDate } from '../../src/calendar/day-number.ts';

describe('day numbers', () => {
  it('count from 1970-01-01', () => {
    expect(parseCivilDate('1970-01-01')).toBe(0);
    expect(parseCivilDate('2000-03-01')).toBe(11017);
    expect(renderCivilDate(-1)).toBe('1969-12-31');
  });

  it('agree with Temporal on every date from 1890 to 2110', () => {
    const last = parseCivilDate('2110-12-31');
    let date = Temporal.PlainDate.from('1890-01-01');
    for (let day = parseCivilDate('1890-01-01'); day <= last; day += 1) {
      if (renderCivilDate(day) !== date.toString()) throw new Error(`${day} gave ${renderCivilDate(day)}, not ${date}`);
      date = date.add({ days: 1 });
    }
    expect(date.toString()).toBe('2111-01-01');
  });

  it.each([0, 1, 59, 99, 100, 399, 400, 1582, 1900, 2000, 9999])(
    'go there and back at both ends of year %i',
    (year) => {
      for (const [month, day] of [
        [1, 1],
        [2, 28],
        [3, 1],
        [12, 31],
      ] as const) {
        expect(computeDateParts(dayNumberOf(year, month, day))).toEqual({ year, month, day });
      }
    },
  );

  it('take 29 February of a common year as 1 March', () => {
    expect(renderCivilDate(dayNumberOf(2027, 2, 29))).toBe('2027-03-01');
  });

  it('refuse a month outside the year', () => {
    expect(() => dayNumberOf(2026, 0, 1)).toThrow('Unexpected month 0');
  });
});

describe('parseCivilDate', () => {
  it.each([
    ['a date that does not exist', '2025-02-30'],
    ['29 February of a common year', '1900-02-29'],
    ['month 0', '2025-00-10'],
    ['month 13', '2025-13-01'],
    ['day 0', '2025-01-00'],
    ['a short month', '2025-1-01'],
    ['a time after it', '2025-01-01T00:00'],
    ['a space', ' 2025-01-01'],
    ['a line break', '2025-01-01\n'],
    ['digits of another script', '٢٠٢٥-01-01'],
    ['slashes', '2025/01/01'],
    ['a sign', '-025-01-01'],
    ['nothing', ''],
  ])('refuses %s', (_, text) => {
    expect(() => parseCivilDate(text)).toThrow(RangeError);
  });

  it('says what was found and what to do', () => {
    const message = 'Unexpected date `2025-02-30`, expected a real calendar date, use `YYYY-MM-DD`.';
    expect(() => parseCivilDate('2025-02-30')).toThrow(message);
  });
});
