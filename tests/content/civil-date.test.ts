import { describe, expect, it } from 'vitest';
import {
  addDays,
  computeMonday,
  computeWeekDay,
  findTimeZone,
  isCivilDate,
  isClockTime,
  isCoveredDate,
  isMonthDay,
} from '../../src/content/civil-date.ts';

describe('isCivilDate', () => {
  it.each(['2026-07-29', '2024-02-29', '2000-02-29', '1900-01-01', '0001-01-01'])('takes %s', (text) => {
    expect(isCivilDate(text)).toBe(true);
  });
  it.each([
    '2025-02-29',
    '1900-02-29',
    '2026-13-01',
    '2026-00-01',
    '2026-04-31',
    '20260729',
    '2026-7-29',
    '',
    ' 2026-07-29',
    '2026-07-29T00:00',
    '2026-07-29[u-ca=hebrew]',
    '-000001-01-01',
  ])('refuses %s', (text) => {
    expect(isCivilDate(text)).toBe(false);
  });
});

describe('small tests of text', () => {
  it('covers 1800 to 2200', () => {
    expect(['1799-12-31', '1800-01-01', '2200-12-31', '2201-01-01'].map(isCoveredDate)).toEqual([
      false,
      true,
      true,
      false,
    ]);
  });
  it('takes days of every year', () => {
    expect(['06-18', '02-28', '02-29', '00-10', '6-18', '06-31'].map(isMonthDay)).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
  });
  it('takes times of day', () => {
    expect(['00:00', '23:59', '24:00', '9:00', '09:60', '09:00:00'].map(isClockTime)).toEqual([
      true,
      true,
      false,
      false,
      false,
      false,
    ]);
  });
});

// Days of the week of well-known dates: 1970-01-01 was a Thursday (POSIX epoch), 2000-01-01 a Saturday; the week of
// the demonstration lessons begins on Monday 2026-07-27.
describe('days of the week', () => {
  it('names them', () => {
    expect(['1970-01-01', '2000-01-01', '2026-07-27', '2026-08-02'].map(computeWeekDay)).toEqual([
      'thursday',
      'saturday',
      'monday',
      'sunday',
    ]);
    expect(() => computeWeekDay('2026-02-30')).toThrow(RangeError);
  });
  it('finds the Monday on or before', () => {
    expect(['2026-07-27', '2026-07-28', '2026-08-02', '2026-01-01'].map(computeMonday)).toEqual([
      '2026-07-27',
      '2026-07-27',
      '2026-07-27',
      '2025-12-29',
    ]);
    expect(addDays('2026-12-31', 1)).toBe('2027-01-01');
  });
});

describe('findTimeZone', () => {
  it('knows zones of the IANA list in any case', () => {
    expect(findTimeZone('Pacific/Auckland')).toBe('Pacific/Auckland');
    expect(findTimeZone('pacific/auckland')).toBe('Pacific/Auckland');
    expect(findTimeZone('UTC')).toBe('UTC');
  });
  it.each(['Pacific/Aukland', '+12:00', '', 'Auckland', '2026-01-01T00:00Z'])('does not know %s', (name) => {
    expect(findTimeZone(name)).toBeUndefined();
  });
});
