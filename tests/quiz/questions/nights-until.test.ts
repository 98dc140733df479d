import { describe, expect, it } from 'vitest';
import { nightsUntil } from '../../../src/quiz/questions/nights-until.ts';
import { makeNights, range } from './fake-nights.ts';
import {
  countLevels,
  readAnswer,
  readMeanings,
  readPrompt,
  readWorking,
  requireQuestion,
  takeQuestion,
} from './read-question.ts';

describe('nights-until', () => {
  it('counts on from tonight to each night asked about, but for the next', () => {
    const instances = nightsUntil.list(makeNights());
    expect(readPrompt(takeQuestion(instances, 0))).toBe('Tonight is Fen a. How many nights until Fen c?');
    expect(instances.map(readAnswer)).toEqual(['2', '3', '4', '5', '6', '7']);
    expect(countLevels(instances)).toEqual([4, 2, 0]);
    expect(instances[0]).toMatchObject({ unit: 'nights', tells: ['night of 2026-07-29'] });
  });

  it('counts no further than twelve', () => {
    const instances = nightsUntil.list(makeNights({ to: '2026-08-31' }));
    expect(readAnswer(takeQuestion(instances, -1))).toBe('12');
    expect(nightsUntil.list(makeNights({ to: '2026-07-30' }))).toEqual([]);
  });

  it('works it out aloud', () => {
    expect(readWorking(requireQuestion(nightsUntil.list(makeNights()), 'until Gum a'))).toBe(
      'Gum a is night 19 of the month; tonight is night 16; 3 nights to go. ' +
        'Count on from tonight, starting with the night after: 1 Fen b, 2 Fen c, 3 Gum a.',
    );
  });

  it('counts real nights over the end of a month of 29, not names', () => {
    const instances = nightsUntil.list(makeNights({ today: '2026-08-08', from: '2026-08-08' }));
    const over = requireQuestion(instances, 'until Ash c');
    // Tonight is the 26th name; by the thirty names it would be seven.
    expect(readAnswer(over)).toBe('6');
    expect(over.level).toBe(3);
    expect(readMeanings(over)).toEqual({
      5: 'Left out the night that is asked for.',
      7: 'Counted tonight as well.',
    });
    expect(readWorking(over)).toBe(
      'Tonight is night 26 of 29: 3 nights to the end of the month. Ash c is night 3 of the next: 6 nights to go. ' +
        'Count on from tonight, starting with the night after: 1 Ivy c, 2 Jay a, 3 Jay b, 4 Ash a, 5 Ash b, 6 Ash c. ' +
        'Jay c does not come this time.',
    );
  });

  it('tells a count by the list from one that took tonight as well', () => {
    const said = [...range(1, 16), ...range(20, 30)];
    const instances = nightsUntil.list(makeNights({ months: [{ said }] }));
    expect(readMeanings(requireQuestion(instances, 'until Gum c'))).toEqual({
      1: 'Left out the night that is asked for.',
      3: 'Counted tonight as well.',
      5: 'Counted the names of the list, not the nights that come.',
    });
  });

  it('never asks for tonight, nor for the second night of a name', () => {
    const said = [...range(1, 16), 16, 17, 17, ...range(18, 27)];
    const instances = nightsUntil.list(makeNights({ months: [{ said }] }));
    expect(instances.map(readPrompt).slice(0, 2)).toEqual([
      'Tonight is Fen a. How many nights until Fen b?',
      'Tonight is Fen a. How many nights until Fen c?',
    ]);
    expect(instances.map(readAnswer).slice(0, 2)).toEqual(['2', '4']);
    expect(instances.every(({ level }) => level === 3)).toBe(true);
  });
});
