import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../../src/calendar/almanac.ts';
import { measureYear } from '../../../src/quiz/questions/measure-year.ts';
import { monthsInYear } from '../../../src/quiz/questions/months-in-year.ts';
import { samplePlace, sampleRules } from '../../calendar/sample-rules.ts';
import { type FakeMonth, makeNights, range } from './fake-nights.ts';
import { countLevels, readAnswer, readMeanings, readPrompt, readWorking, requireQuestion } from './read-question.ts';

/** Years of as many months as given, from 14 July 2026 on, their months of 30 and 29 nights in turn. */
function makeYears(counts: readonly number[]): FakeMonth[] {
  return counts.flatMap((count, year) =>
    range(1, count).map((number) => ({
      said: range(1, number % 2 === 1 ? 30 : 29),
      name: `Month ${number}`,
      number,
      year: 2026 + year,
      intercalary: number === 13,
    })),
  );
}

/** Tonight is in the second of five years. */
const FACTS = makeNights({
  months: makeYears([12, 13, 12, 12, 13]),
  today: '2027-07-20',
  from: '2027-07-01',
  to: '2027-07-20',
});

describe('months-in-year', () => {
  it('asks for the year of the lesson and those around it, in three ways', () => {
    const instances = monthsInYear.list(FACTS);
    expect(countLevels(instances)).toEqual([4, 4, 4]);
    expect(instances.map(readAnswer).filter((_, place) => place % 3 === 0)).toEqual(['13', '12', '12', '12']);
    expect(instances.slice(0, 3).map(readPrompt)).toEqual([
      'Twelve months have about 354 nights, thirteen months about 384. The year that begins on Saturday 3 July 2027 has 384 nights. How many months has it?',
      'A month has 29 or 30 nights as a rule. A year of this calendar begins on Saturday 3 July 2027, and the next year on Friday 21 July 2028. How many months has the first of the two?',
      'A month has 29 or 30 nights as a rule. The first month of a year begins on Saturday 3 July 2027, and its last month on Wednesday 21 June 2028. How many months has the year?',
    ]);
    expect(instances[0]).toMatchObject({ kind: 'line', unit: 'months' });
  });

  it('is about the dates asked about that lie in the year', () => {
    const dates = monthsInYear.list(FACTS).map(({ about }) => about.dates.length);
    expect(dates.filter((_, place) => place % 3 === 0)).toEqual([18, 0, 2, 0]);
  });

  it('works it out, and knows what was left out', () => {
    const instances = monthsInYear.list(FACTS);
    const long = requireQuestion(instances, 'months of the year 2027, 3');
    expect(readWorking(long)).toBe(
      'From Saturday 3 July 2027 to Wednesday 21 June 2028 it is 354 nights. ' +
        'That is 12 months; with the last month, which begins then, it is 13 months.',
    );
    expect(readMeanings(long)).toEqual({
      12: 'Left out the last month, which has only begun.',
      14: 'Counted the first month of the next year as well.',
    });
    const usual = requireQuestion(instances, 'months of the year 2026, 2');
    expect(readWorking(usual)).toBe(
      'From Tuesday 14 July 2026 to Saturday 3 July 2027 it is 354 nights. ' +
        'Twelve months have about 354 nights, thirteen months about 384: 12 months.',
    );
    expect(readMeanings(usual)).toEqual({
      13: 'Counted the first month of the next year as well.',
      11: 'Counted only the beginnings of months that lie between the two dates.',
    });
  });

  it('has nothing to ask where a year is not whole', () => {
    expect(monthsInYear.list(makeNights({ months: makeYears([7]) }))).toEqual([]);
  });
});

describe('measureYear', () => {
  /*
   * These years begin with the first full Moon on or after the June solstice: about 22 June 2024, 10 July 2025, 30 June
   * 2026, 18 July 2027 and 6 July 2028, so 383, 355, 383 and 354 days apart; thirteen months take 384. Dates of the full
   * Moons: published almanacs, from memory.
   */
  it('finds long years by the sky', () => {
    const almanac = createAlmanac(sampleRules(), samplePlace(-41.1, 174.2, 'Pacific/Auckland'));
    const years = [2024, 2025, 2026, 2027].map((year) => measureYear(almanac, `${year}-09-01`));
    expect(years.map((year) => [year?.year, year?.months])).toEqual([
      [2024, 13],
      [2025, 12],
      [2026, 13],
      [2027, 12],
    ]);
  });

  it('ends with the years that the almanac covers', () => {
    const almanac = createAlmanac(sampleRules(), samplePlace(-41.1, 174.2, 'Pacific/Auckland'));
    expect(measureYear(almanac, '2200-12-01')).toBeUndefined();
    expect(measureYear(almanac, '1800-01-05')).toBeUndefined();
    expect(measureYear(almanac, '2199-12-01')?.months).toBeGreaterThan(11);
  });
});
