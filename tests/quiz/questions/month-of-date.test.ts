import { describe, expect, it } from 'vitest';
import { monthOfDate } from '../../../src/quiz/questions/month-of-date.ts';
import { type FakeMonth, makeNights, range } from './fake-nights.ts';
import {
  countLevels,
  readAnswer,
  readMeanings,
  readPrompt,
  readSets,
  readWorking,
  requireQuestion,
  takeQuestion,
} from './read-question.ts';

const MONTHS = ['Lamp', 'Frost', 'Boots', 'Kite', 'Nest', 'Light', 'Feet', 'Grass', 'Warm', 'Birds', 'Spider', 'Wool'];

/** A month of the year by its place, the thirteenth included, with 29 nights. */
function makeMonth(number: number, more: Partial<FakeMonth> = {}): FakeMonth {
  return { said: range(1, 29), name: MONTHS[number - 1] ?? 'Waiting', number, ...more };
}

const THIRTEENTH = { name: 'Waiting', after: 12 };

/** From 14 July 2026 on; tonight is in the second month. */
function makeFacts(months: readonly FakeMonth[], more: Parameters<typeof makeNights>[0] = {}) {
  return makeNights({ monthNames: MONTHS, months, today: '2026-08-14', from: '2026-08-10', to: '2026-09-12', ...more });
}

describe('month-of-date', () => {
  it('asks for the month of each date', () => {
    const instances = monthOfDate.list(makeFacts([2, 3, 4].map((number) => makeMonth(number))));
    expect(instances).toHaveLength(34);
    expect(countLevels(instances)).toEqual([27, 3, 4]);
    const boots = requireQuestion(instances, 'Friday 14 August');
    expect(readPrompt(boots)).toBe('In which month is the night of Friday 14 August (from sunset on)?');
    expect(readAnswer(boots)).toBe('Boots');
    expect(readWorking(boots)).toBe(
      'Boots goes from Wednesday 12 August to Wednesday 9 September. Friday 14 August is its night 3.',
    );
  });

  it('knows the month before, the one after, and the one that is counted from January on', () => {
    const boots = requireQuestion(
      monthOfDate.list(makeFacts([2, 3, 4].map((number) => makeMonth(number)))),
      'Friday 14 August',
    );
    expect(readMeanings(boots)).toMatchObject({
      Frost: 'Took the month before: its last night is Tuesday 11 August.',
      Kite: 'Took the month after: its first night is Thursday 10 September.',
      Grass: 'Counted the months from January on: the civil month has the same number.',
      Nest: 'Does not know the order of the months yet.',
    });
    expect(readSets(boots)).toContain('Feet, Grass, Kite');
  });

  it('is hardest on the first and the last night of a month', () => {
    const instances = monthOfDate.list(makeFacts([2, 3, 4].map((number) => makeMonth(number))));
    expect(instances.filter(({ level }) => level === 3).map(({ about }) => about.dates[0])).toEqual([
      '2026-08-11',
      '2026-08-12',
      '2026-09-09',
      '2026-09-10',
    ]);
  });

  it('has the thirteenth month among the wrong ones where it is left out', () => {
    const months = [makeMonth(12), makeMonth(1, { year: 2027 }), makeMonth(2, { year: 2027 })];
    const instances = monthOfDate.list(makeFacts(months, { thirteenthMonth: THIRTEENTH }));
    const first = requireQuestion(instances, 'Friday 14 August');
    expect([readAnswer(first), first.level]).toEqual(['Lamp', 3]);
    for (const set of readSets(first)) expect(set.split(', ')).toContain('Waiting');
    expect(readMeanings(first)).toMatchObject({
      Waiting: 'Put in the thirteenth month: only long years have it.',
      Wool: 'Took the month before: its last night is Tuesday 11 August.',
    });
    expect(requireQuestion(instances, 'Friday 11 September').level).toBe(2);
  });

  it('asks about the thirteenth month where it comes', () => {
    const months = [makeMonth(12), makeMonth(13, { name: 'Waiting', intercalary: true }), makeMonth(1, { year: 2027 })];
    const instances = monthOfDate.list(makeFacts(months, { thirteenthMonth: THIRTEENTH }));
    const waiting = requireQuestion(instances, 'Friday 14 August');
    expect([readAnswer(waiting), waiting.level]).toEqual(['Waiting', 3]);
    expect(readSets(waiting).slice(0, 4)).toEqual([
      'Birds, Spider, Wool',
      'Lamp, Spider, Wool',
      'Frost, Lamp, Wool',
      'Boots, Frost, Lamp',
    ]);
  });

  it('offers no second month of the same name', () => {
    const monthNames = ['Rain', 'Sun', 'RAIN', 'Wind', ...range(5, 12).map((number) => `Month ${number}`)];
    const months = [1, 2, 3].map((number) => ({ ...makeMonth(number), name: monthNames[number - 1] ?? '' }));
    for (const instance of monthOfDate.list(makeFacts(months, { monthNames }))) {
      for (const set of readSets(instance)) {
        const options = [readAnswer(instance), ...set.split(', ')].map((name) => name.toLowerCase());
        expect(new Set(options).size).toBe(options.length);
      }
    }
  });

  it('has options where the months beside cannot be told', () => {
    const untold = ['2026-08-11', '2026-09-10'];
    const facts = makeFacts(
      [2, 3, 4].map((number) => makeMonth(number)),
      { untold, from: '2026-08-14', to: '2026-08-14' },
    );
    const instance = takeQuestion(monthOfDate.list(facts), 0);
    expect(readSets(instance).length).toBeGreaterThan(3);
    expect(readMeanings(instance)['Frost']).toBe('Does not know the order of the months yet.');
  });

  it('has nothing to ask where all months have one name', () => {
    const months = [2, 3, 4].map((number) => makeMonth(number, { name: 'Moon' }));
    expect(monthOfDate.list(makeFacts(months, { monthNames: Array<string>(12).fill('moon') }))).toEqual([]);
  });
});
