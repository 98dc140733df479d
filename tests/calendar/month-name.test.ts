import { describe, expect, it } from 'vitest';
import { computeMonthName } from '../../src/calendar/month-name.ts';
import type { CalendarRules } from '../../src/calendar/rules.ts';

const TWELVE = Array.from({ length: 12 }, (_, index) => ({ name: `M${index + 1}` }));
const THIRTEEN = [...TWELVE, { name: 'M13' }];

/** The names of a year, an intercalary one in brackets. */
function namesOf(rules: Pick<CalendarRules, 'months' | 'thirteenthMonth'>, monthsInYear: number): string {
  return Array.from({ length: monthsInYear }, (_, index) => {
    const { month, intercalary } = computeMonthName(rules, index + 1, monthsInYear);
    return intercalary ? `[${month.name}]` : month.name;
  }).join(' ');
}

const COMMON = 'M1 M2 M3 M4 M5 M6 M7 M8 M9 M10 M11 M12';

describe('computeMonthName', () => {
  it('takes the names in order in a common year', () => {
    expect(namesOf({ months: TWELVE }, 12)).toBe(COMMON);
    expect(namesOf({ months: THIRTEEN }, 12)).toBe(COMMON);
    expect(namesOf({ months: TWELVE, thirteenthMonth: { name: 'X', after: 3 } }, 12)).toBe(COMMON);
  });

  it('puts the thirteenth month after the month that the rules say', () => {
    const long = (after: number) => namesOf({ months: TWELVE, thirteenthMonth: { name: 'X', after } }, 13);
    expect(long(12)).toBe(`${COMMON} [X]`);
    expect(long(1)).toBe('M1 [X] M2 M3 M4 M5 M6 M7 M8 M9 M10 M11 M12');
    expect(long(6)).toBe('M1 M2 M3 M4 M5 M6 [X] M7 M8 M9 M10 M11 M12');
  });

  it('says the last name twice, or uses a listed thirteenth, where the rules have no such month', () => {
    expect(namesOf({ months: TWELVE }, 13)).toBe(`${COMMON} [M12]`);
    expect(namesOf({ months: THIRTEEN }, 13)).toBe(`${COMMON} [M13]`);
  });

  it('stops early in a year of 11 and repeats the last name in a year of 14', () => {
    expect(namesOf({ months: TWELVE }, 11)).toBe('M1 M2 M3 M4 M5 M6 M7 M8 M9 M10 M11');
    expect(namesOf({ months: TWELVE }, 14)).toBe(`${COMMON} [M12] [M12]`);
    expect(namesOf({ months: THIRTEEN }, 14)).toBe(`${COMMON} [M13] [M13]`);
    expect(namesOf({ months: TWELVE, thirteenthMonth: { name: 'X', after: 12 } }, 14)).toBe(`${COMMON} [X] [X]`);
  });

  it('refuses month 0', () => {
    expect(() => computeMonthName({ months: TWELVE }, 0, 12)).toThrow(RangeError);
  });
});
