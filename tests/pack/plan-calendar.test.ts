import { describe, expect, it } from 'vitest';
import { NoNightError } from '../../src/calendar/no-night-error.ts';
import { CALENDAR_PATH, planCalendarFile } from '../../src/pack/plan-calendar.ts';
import { readIcsStrictly } from './check-ics.ts';
import { buildFakeWeek } from './fake-week.ts';

const readEvents = (week: ReturnType<typeof buildFakeWeek>) =>
  readIcsStrictly(new TextEncoder().encode(String(planCalendarFile(week).content)));
const listDates = (week: ReturnType<typeof buildFakeWeek>) => readEvents(week).map(({ start }) => start);

describe('planCalendarFile', () => {
  it('has every night from the first date that is taught to the last, those between as well', () => {
    const week = buildFakeWeek({ lessons: [{ head: { day: 'monday' } }, { head: { day: 'thursday' } }] });
    expect(planCalendarFile(week).path).toBe(CALENDAR_PATH);
    expect(listDates(week)).toEqual(['20260727', '20260728', '20260729', '20260730']);
  });

  it('has the night of a day with two lessons once', () => {
    const monday = { head: { day: 'monday' } } as const;
    expect(listDates(buildFakeWeek({ lessons: [monday, { ...monday, slug: 'monday-lesson-2' }] }))).toEqual([
      '20260727',
    ]);
  });

  it('passes over a night between that cannot be told, and a date that the place left out', () => {
    const week = buildFakeWeek({ lessons: [{ head: { day: 'monday' } }, { head: { day: 'thursday' } }] });
    const { almanac } = week;
    const nights: typeof almanac.nights = function* (from, to) {
      if (from === '2026-07-28') throw new NoNightError('The Sun does not set.');
      if (from !== '2026-07-29') yield* almanac.nights(from, to);
    };
    expect(listDates({ ...week, almanac: { ...almanac, nights } })).toEqual(['20260727', '20260730']);
  });

  it('does not hide a fault of the kit', () => {
    const week = buildFakeWeek();
    const nights = () => {
      throw new TypeError('broken');
    };
    expect(() => planCalendarFile({ ...week, almanac: { ...week.almanac, nights } })).toThrow('broken');
  });
});
