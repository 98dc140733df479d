import { describe, expect, it } from 'vitest';
import { beforeInRun } from '../../../src/quiz/questions/before-in-run.ts';
import { makeNights } from './fake-nights.ts';
import {
  countLevels,
  readAnswer,
  readMeanings,
  readPrompt,
  readSets,
  readWorking,
  requireQuestion,
} from './read-question.ts';

describe('before-in-run', () => {
  it('asks for the night before each of the month', () => {
    const instances = beforeInRun.list(makeNights({ today: '2026-08-20', from: '2026-08-17', to: '2026-08-27' }));
    expect(instances).toHaveLength(30);
    expect(countLevels(instances)).toEqual([20, 9, 1]);
    const instance = requireQuestion(instances, 'before Ash b');
    expect(readPrompt(instance)).toBe('Which night comes just before Ash b this month?');
    expect(readAnswer(instance)).toBe('Ash a');
    expect(readMeanings(instance)).toMatchObject({
      'Ash c': 'Went on in the run instead of back.',
      'Jay c': 'Skipped a night: this one is two away.',
    });
  });

  it('goes back over the end of the month before', () => {
    const instances = beforeInRun.list(makeNights({ today: '2026-08-20' }));
    const first = requireQuestion(instances, 'first night');
    expect(readPrompt(first)).toBe('Ash a is the first night of this month. Which night comes just before it?');
    expect(readAnswer(first)).toBe('Jay b');
    for (const set of readSets(first)) expect(set).toContain('Jay c');
    expect(readWorking(first)).toContain('Month 1 has 29 nights; the next month begins with Ash a.');
  });

  it('asks about the first night of the almanac nothing', () => {
    const instances = beforeInRun.list(makeNights());
    expect(instances.map(({ asks }) => asks)).not.toContain('night before 2026-07-14');
    expect(instances).toHaveLength(28);
  });

  it('names another month', () => {
    const instances = beforeInRun.list(makeNights({ to: '2026-08-13' }));
    expect(readPrompt(requireQuestion(instances, 'night before 2026-08-12'))).toBe(
      'Ash a is the first night of Month 2. Which night comes just before it?',
    );
    expect(readPrompt(requireQuestion(instances, 'night before 2026-08-13'))).toBe(
      'Which night comes just before Ash b in Month 2?',
    );
  });
});
