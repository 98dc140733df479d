import { describe, expect, it } from 'vitest';
import { findDayFault, findGroupFault, findRunFault } from '../../../src/directives/questions/list-faults.ts';
import { openSetting } from './open-setting.ts';

const SETTING = openSetting('2026-07-29');

function pair(rows: readonly string[]) {
  return rows.map((row) => {
    const [left = '', right = ''] = row.split(' | ');
    return { left, right };
  });
}

describe('nights in a run', () => {
  it.each([[['Hidden Moon', 'Round Moon']], [['hidden  moon', 'HALF SHELL', 'Lost in Light']], [['Round Moon']], [[]]])(
    '%j are in order',
    (items) => {
      expect(findRunFault(items, SETTING)).toBeUndefined();
    },
  );

  it('tells the right order', () => {
    expect(findRunFault(['Half Shell', 'Other Half', 'Round Moon'], SETTING)).toEqual({
      found: '`Half Shell`, `Other Half`, `Round Moon`',
      expected: '`Half Shell`, `Round Moon`, `Other Half`, as they come in the month of `2026-07-29`',
    });
  });

  it('tells a name left out from one that is none', () => {
    expect(findRunFault(['Half Shell', 'Gift Night'], SETTING)?.found).toBe('`Gift Night`, which is left out,');
    expect(findRunFault(['Half Shell', 'Gift'], SETTING)?.found).toBe('`Gift`, which is no night,');
    // A month of thirty nights, two months later.
    expect(findRunFault(['Half Shell', 'Gift Night'], openSetting('2026-09-30'))).toBeUndefined();
  });
});

describe('nights on days', () => {
  it.each([
    [['Monday | Lopsided Moon', 'wednesday | round moon', 'Sunday | Late Lantern']],
    [['Lopsided Moon | Monday', 'Wednesday | Round Moon']],
  ])('%j are right', (rows) => {
    expect(findDayFault(pair(rows), SETTING)).toBeUndefined();
  });

  it('tells the night and the date of a wrong row', () => {
    const fault = { found: '`Brim Moon` with `Friday`', expected: '`Short Wait`, the night of `2026-07-31`' };
    expect(findDayFault(pair(['Monday | Lopsided Moon', 'Brim Moon | Friday']), SETTING)).toEqual(fault);
    expect(findDayFault(pair(['Friday | Brim Moon']), SETTING)).toEqual(fault);
  });

  it('wants a day in every row, in the language of the pack', () => {
    expect(findDayFault(pair(['mercredi | Round Moon']), SETTING)?.expected).toMatch(/such as `Monday`/);
    const french = openSetting('2026-07-29', 'ormevire');
    const { name } = french.almanac.nightOn('2026-07-29').night;
    expect(findDayFault(pair([`Mercredi | ${name}`]), french)).toBeUndefined();
  });
});

describe('nights in groups', () => {
  it.each([[['Round Moon | High Water', 'dark water | maybe moon']], [[]]])('%j are right', (rows) => {
    expect(findGroupFault(pair(rows), SETTING)).toBeUndefined();
  });

  it.each([
    ['Round Moon | Dark Water', '`Round Moon` with `High Water`'],
    ['Dark Water | Round Moon', '`Round Moon` with `High Water`'],
    ['Rund Moon | High Water', 'the name of a night with a group'],
    ['Round Moon | Butter Moon', '`Round Moon` with `High Water`'],
  ])('%s is wrong', (row, expected) => {
    expect(findGroupFault(pair([row]), SETTING)?.expected).toBe(expected);
  });
});
