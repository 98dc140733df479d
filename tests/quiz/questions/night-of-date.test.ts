import { describe, expect, it } from 'vitest';
import { nightOfDate } from '../../../src/quiz/questions/night-of-date.ts';
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

describe('night-of-date', () => {
  it('asks for each date, in order', () => {
    const instances = nightOfDate.list(makeNights({ to: '2026-07-29' }));
    expect(instances.map(readPrompt)).toEqual([
      'Which night is Monday 27 July, from sunset on?',
      'Which night is Tuesday 28 July, from sunset on?',
      'Which night is Wednesday 29 July, from sunset on?',
    ]);
    expect(instances.map(readAnswer)).toEqual(['Elm b', 'Elm c', 'Fen a']);
    expect(instances.map(({ asks }) => asks)).toEqual([27, 28, 29].map((day) => `night of 2026-07-${day}`));
    expect(instances[0]?.about).toEqual({ nights: [14], dates: ['2026-07-27'] });
  });

  it('says from when on, as the night begins', () => {
    const ask = (dayBegins: 'midnight' | 'sunrise') =>
      readPrompt(takeQuestion(nightOfDate.list(makeNights({ dayBegins })), 0));
    expect(ask('midnight')).toBe('Which night is Monday 27 July?');
    expect(ask('sunrise')).toBe('Which night is Monday 27 July, from sunrise on?');
  });

  it('works it out aloud, and says what each wrong night means', () => {
    const friday = requireQuestion(nightOfDate.list(makeNights()), 'Friday 31 July');
    expect(readWorking(friday)).toBe(
      'Friday 31 July is night 18 of the month: Fen c. The night before is Fen b, the night after is Gum a.',
    );
    expect(readSets(friday)).toEqual([
      'Elm c, Fen a, Fen b',
      'Fen a, Fen b, Gum a',
      'Fen b, Gum a, Gum b',
      'Gum a, Gum b, Gum c',
      'Elm a, Elm b, Fen b',
      'Den c, Elm a, Gum a',
    ]);
    expect(readMeanings(friday)).toMatchObject({
      'Fen b': 'Took the night that ends on this date, or counted tonight as well.',
      'Gum a': 'Counted one night too many: this name stands just after it in the run.',
      'Fen a': 'Lost count: this name stands earlier in the run.',
      'Elm a': 'Mixed up the two halves of the month: this is the mirror night, with about the same shape of Moon.',
    });
    const tuesday = requireQuestion(nightOfDate.list(makeNights()), 'Tuesday 28 July');
    expect(readMeanings(tuesday)['Elm b']).toBe(
      'Took the night that ends on this date, not the one that begins on it.',
    );
  });

  it('is harder further off, and hardest over the end of the month or a name said twice', () => {
    const instances = nightOfDate.list(makeNights({ to: '2026-08-13' }));
    expect(countLevels(instances)).toEqual([6, 10, 2]);
    expect(instances.at(-1)?.hardness).toEqual({ nights: 15, hurdle: true });
    const twice = nightOfDate.list(makeNights({ months: [{ said: [...range(1, 17), 17, ...range(18, 28)] }] }));
    expect(requireQuestion(twice, 'Friday 31 July').level).toBe(3);
    expect(requireQuestion(twice, 'Thursday 30 July').level).toBe(1);
    expect(readAnswer(requireQuestion(twice, 'Friday 31 July'))).toBe('Fen b');
    expect(readWorking(requireQuestion(twice, 'Friday 31 July'))).toContain(
      'Fen b is said for more than one night this month.',
    );
  });

  it('has a name that does not come among the wrong ones beside it', () => {
    const instances = nightOfDate.list(makeNights({ today: '2026-08-10', from: '2026-08-11', to: '2026-08-12' }));
    for (const instance of instances) {
      for (const set of readSets(instance)) expect(set).toContain('Jay c');
      expect(readMeanings(instance)['Jay c']).toBe('Went by the list of names: this one does not come this time.');
    }
    expect(instances.map(readAnswer)).toEqual(['Jay b', 'Ash a']);
  });

  it('has nothing to ask without dates, or where a calendar has one name', () => {
    expect(nightOfDate.list(makeNights({ from: '2026-07-31', to: '2026-07-27' }))).toEqual([]);
    const groups = [['Only', ['Moon']]] as const;
    expect(nightOfDate.list(makeNights({ groups, months: [{ said: Array<number>(29).fill(1) }] }))).toEqual([]);
  });

  it('leaves out the neighbour that lies outside the years of the almanac', () => {
    const facts = makeNights({ firstDate: '2026-07-27', today: '2026-07-27' });
    expect(readWorking(takeQuestion(nightOfDate.list(facts), 0))).not.toContain('The night before');
  });
});
