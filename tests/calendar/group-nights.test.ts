import { describe, expect, it } from 'vitest';
import type { NightRecord } from '../../src/calendar/almanac-types.ts';
import { groupNights } from '../../src/calendar/group-nights.ts';

const buildRecord = (group: string, nightOfMonth: number, firstDate = '2026-07-14'): NightRecord => ({
  date: firstDate,
  beginsMs: 0,
  endsMs: 1,
  beginsWith: 'sunset',
  night: { name: `Night ${nightOfMonth}`, number: nightOfMonth, group, groupNumber: 1, numberInGroup: 1 },
  repeat: false,
  nightOfMonth,
  month: { name: 'Frost Month', number: 1, year: 2026, firstDate, length: 29, intercalary: false },
  basis: 'computed',
});

const read = (records: readonly NightRecord[]) =>
  groupNights(records).map(({ name, nights }) => [name, ...nights.map(({ nightOfMonth }) => nightOfMonth)]);

describe('groupNights', () => {
  it('keeps neighbours of one group together, in order', () => {
    expect(read([buildRecord('A', 1), buildRecord('A', 2), buildRecord('B', 3)])).toEqual([
      ['A', 1, 2],
      ['B', 3],
    ]);
    expect(read([])).toEqual([]);
  });

  it('begins a group anew when it comes back, and in another month', () => {
    expect(read([buildRecord('A', 1), buildRecord('B', 2), buildRecord('A', 3)])).toEqual([
      ['A', 1],
      ['B', 2],
      ['A', 3],
    ]);
    expect(read([buildRecord('A', 29), buildRecord('A', 1, '2026-08-12')])).toEqual([
      ['A', 29],
      ['A', 1],
    ]);
  });
});
