import { describe, expect, it } from 'vitest';
import { nextInRun } from '../../../src/quiz/questions/next-in-run.ts';
import { makeNights, range } from './fake-nights.ts';
import {
  countLevels,
  readAnswer,
  readMeanings,
  readPrompt,
  readSets,
  readWorking,
  requireQuestion,
} from './read-question.ts';

describe('next-in-run', () => {
  it('asks for the night after each of the month, and over its end', () => {
    const instances = nextInRun.list(makeNights());
    expect(instances).toHaveLength(29);
    expect(countLevels(instances)).toEqual([19, 9, 1]);
    const first = requireQuestion(instances, 'after Ash a');
    expect(readPrompt(first)).toBe('Which night comes next after Ash a this month?');
    expect(readAnswer(first)).toBe('Ash b');
    const last = requireQuestion(instances, 'last night');
    expect(readPrompt(last)).toBe('Jay b is the last night of this month. Which night comes next?');
    expect(readAnswer(last)).toBe('Ash a');
    expect(readWorking(last)).toBe(
      'After Jay b comes Ash a. Month 1 has 29 nights; the next month begins with Ash a. Jay c does not come this time.',
    );
  });

  it('says where one group ends and the next begins', () => {
    expect(readWorking(requireQuestion(nextInRun.list(makeNights()), 'after Ash c'))).toBe(
      'After Ash c comes Bay a. Ash ends with Ash c, and Bay begins with Bay a.',
    );
  });

  it('knows going back from skipping one, and never offers the night of the question', () => {
    const instance = requireQuestion(nextInRun.list(makeNights()), 'after Den b');
    expect(readMeanings(instance)).toMatchObject({
      'Den a': 'Went back in the run instead of on.',
      'Elm a': 'Skipped a night: this one is two away.',
    });
    for (const set of readSets(instance)) expect(set.split(', ')).not.toContain('Den b');
  });

  it('names other months that are asked about', () => {
    const instances = nextInRun.list(makeNights({ to: '2026-08-13' }));
    expect(instances).toHaveLength(31);
    expect(readPrompt(requireQuestion(instances, 'night after 2026-08-13'))).toBe(
      'Which night comes next after Ash b in Month 2?',
    );
  });

  it('leaves out another month that bears the same name', () => {
    const months = [
      { said: range(1, 29), name: 'Wool' },
      { said: range(1, 30), name: 'wool' },
    ];
    expect(nextInRun.list(makeNights({ months, to: '2026-08-13' }))).toHaveLength(29);
  });

  it('asks about no name said twice, and after a left-out name says so', () => {
    const said = [...range(1, 5), 5, ...range(6, 10), ...range(12, 29)];
    const instances = nextInRun.list(makeNights({ months: [{ said }, { said: range(1, 29) }] }));
    const asked = instances.map(readPrompt).join();
    expect(asked).not.toContain('after Bay b');
    expect(readAnswer(requireQuestion(instances, 'after Bay a'))).toBe('Bay b');
    const gap = requireQuestion(instances, 'after Den a');
    expect(readAnswer(gap)).toBe('Den c');
    expect(gap.level).toBe(3);
    for (const set of readSets(gap)) expect(set).toContain('Den b');
  });
});
