import { describe, expect, it } from 'vitest';
import { dateOfNight } from '../../../src/quiz/questions/date-of-night.ts';
import { makeNights, range } from './fake-nights.ts';
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

describe('date-of-night', () => {
  it('asks for the date of each night, in its month', () => {
    const instances = dateOfNight.list(makeNights());
    expect(readPrompt(takeQuestion(instances, 4))).toBe('In Month 1, on which date does Fen c begin at sunset?');
    expect(instances.map(readAnswer).slice(0, 2)).toEqual(['Monday 27 July', 'Tuesday 28 July']);
    expect(instances).toHaveLength(10);
    expect(countLevels(instances)).toEqual([6, 4, 0]);
    expect(instances[0]).toMatchObject({ asks: 'night of 2026-07-27', tells: [] });
  });

  it('says when the night begins', () => {
    const ask = (dayBegins: 'midnight' | 'sunrise') =>
      readPrompt(takeQuestion(dateOfNight.list(makeNights({ dayBegins })), 0));
    expect(ask('midnight')).toBe('In Month 1, which date is Elm b?');
    expect(ask('sunrise')).toBe('In Month 1, on which date does Elm b begin at sunrise?');
  });

  it('knows who counted tonight as well, who took the morning, and who took another month', () => {
    const later = requireQuestion(dateOfNight.list(makeNights()), 'Gum b');
    expect(readAnswer(later)).toBe('Sunday 2 August');
    expect(readMeanings(later)).toMatchObject({
      'Thursday 30 July': 'Lost count: 3 days too early.',
      'Saturday 1 August': 'Counted tonight as well.',
      'Monday 3 August': 'Took the date on which the night ends, not the one on which it begins.',
      'Tuesday 4 August': 'Lost count: 2 days too late.',
      'Monday 31 August': 'The right night, but in Month 2.',
      'Tuesday 1 September': 'Took Month 2, and counted one day off as well.',
    });
    const earlier = requireQuestion(dateOfNight.list(makeNights()), 'Elm b');
    expect(readMeanings(earlier)).toMatchObject({
      'Sunday 26 July': 'Counted one day too few.',
      'Tuesday 28 July': 'Took the date on which the night ends, or counted tonight as well.',
    });
    const midnight = requireQuestion(dateOfNight.list(makeNights({ dayBegins: 'midnight' })), 'Gum b');
    expect(readMeanings(midnight)['Monday 3 August']).toBe('Counted one day too many.');
  });

  it('has dates in a row around the right one, and pairs a month apart', () => {
    const sets = readSets(requireQuestion(dateOfNight.list(makeNights()), 'Fen c'));
    expect(sets).toEqual([
      'Thursday 30 July, Tuesday 28 July, Wednesday 29 July',
      'Saturday 1 August, Thursday 30 July, Wednesday 29 July',
      'Saturday 1 August, Sunday 2 August, Thursday 30 July',
      'Monday 3 August, Saturday 1 August, Sunday 2 August',
      'Friday 28 August, Saturday 29 August, Thursday 30 July',
      'Saturday 1 August, Saturday 29 August, Sunday 30 August',
    ]);
  });

  it('counts from tonight in the working', () => {
    const instances = dateOfNight.list(makeNights());
    expect(readWorking(requireQuestion(instances, 'Gum b'))).toBe(
      'Month 1 begins on Tuesday 14 July. Gum b is its night 20: Sunday 2 August. ' +
        'Tonight, Wednesday 29 July, is night 16: count 4 nights on.',
    );
    expect(readWorking(requireQuestion(instances, 'Elm c'))).toContain('count 1 night back.');
    expect(readWorking(requireQuestion(instances, 'Fen a'))).not.toContain('Tonight');
  });

  it('asks about no name said twice in its month, and no month beside one of the same name', () => {
    const twice = dateOfNight.list(makeNights({ months: [{ said: [...range(1, 17), 17, ...range(18, 28)] }] }));
    expect(twice.map(readPrompt).join()).not.toContain('Fen b');
    expect(twice).toHaveLength(8);
    const months = [
      { said: range(1, 29), name: 'Wool' },
      { said: range(1, 29), name: 'wool' },
    ];
    expect(dateOfNight.list(makeNights({ months }))).toEqual([]);
  });

  it('says the year of a date that is not of the lesson’s, but not in the options', () => {
    const facts = makeNights({ firstDate: '2026-12-20', today: '2026-12-30', from: '2026-12-28', to: '2027-01-05' });
    const instance = takeQuestion(dateOfNight.list(facts), -1);
    expect(readAnswer(instance)).toBe('Tuesday 5 January');
    expect(readWorking(instance)).toContain('Tuesday 5 January 2027');
  });
});
