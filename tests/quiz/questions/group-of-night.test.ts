import { describe, expect, it } from 'vitest';
import { groupOfNight } from '../../../src/quiz/questions/group-of-night.ts';
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

const GROUPS = [
  ['Dark', ['one', 'two']],
  ['Growing', ['three', 'four', 'five', 'six', 'seven']],
  ['Round', ['eight', 'nine', 'ten']],
  ['Shrinking', ['eleven', 'twelve', 'thirteen', 'fourteen', 'fifteen']],
  ['Late', ['sixteen', 'seventeen']],
] as const;

/** Tonight is `four`; the dates go from `three` to `ten`. */
function makeFacts(more: Parameters<typeof makeNights>[0] = {}) {
  return makeNights({
    groups: GROUPS,
    months: [{ said: range(1, 17) }],
    today: '2026-07-17',
    from: '2026-07-16',
    to: '2026-07-23',
    ...more,
  });
}

describe('group-of-night', () => {
  it('asks for the group of each name and of each date', () => {
    const instances = groupOfNight.list(makeFacts());
    expect(countLevels(instances)).toEqual([8, 4, 4]);
    const named = requireQuestion(instances, 'group of night 5');
    expect(readPrompt(named)).toBe('Which group does five belong to?');
    expect(readAnswer(named)).toBe('Growing');
    expect(readWorking(named)).toBe('five belongs to Growing: three, four, five, six, seven.');
    const dated = requireQuestion(instances, 'Sunday 19 July');
    expect(readPrompt(dated)).toBe('Which group does the night of Sunday 19 July (from sunset on) belong to?');
    expect(readAnswer(dated)).toBe('Growing');
    expect(dated.level).toBe(2);
    expect(readWorking(dated)).toBe(
      'Sunday 19 July is night 6 of the month: six. six belongs to Growing: three, four, five, six, seven.',
    );
  });

  it('knows a count that is one night off at the edge of a group', () => {
    const edge = requireQuestion(groupOfNight.list(makeFacts()), 'Monday 20 July');
    expect(edge.level).toBe(3);
    expect(readAnswer(edge)).toBe('Growing');
    expect(readMeanings(edge)).toEqual({
      Dark: 'Took the group before: does not know yet where this group begins.',
      Round: 'Counted one night too many: eight, the night after, is in this group.',
      Shrinking: 'Mixed up the two halves of the month: this group has about the same shapes of Moon.',
      Late: 'Does not know the groups and their order yet.',
    });
  });

  it('offers groups around the right one', () => {
    expect(readSets(requireQuestion(groupOfNight.list(makeFacts()), 'group of night 9'))).toEqual([
      'Dark, Growing, Late',
      'Dark, Growing, Shrinking',
      'Growing, Late, Shrinking',
      'Dark, Late, Shrinking',
    ]);
  });

  it('does not ask by a name that two groups have, nor offer a group of the same name', () => {
    const groups = [
      ['Dark', ['one', 'two']],
      ['Bright', ['three', 'ONE', 'five']],
      ['dark', ['six', 'seven']],
    ] as const;
    const facts = makeFacts({ groups, months: [{ said: range(1, 7) }], from: '2026-07-14', to: '2026-07-20' });
    const instances = groupOfNight.list(facts);
    expect(instances.filter(({ level }) => level === 1).map(readPrompt)).toEqual(
      ['two', 'three', 'five', 'six', 'seven'].map((name) => `Which group does ${name} belong to?`),
    );
    expect(readAnswer(requireQuestion(instances, 'Tuesday 14 July'))).toBe('Dark');
    expect(readSets(requireQuestion(instances, 'Tuesday 14 July'))).toEqual(['Bright']);
  });

  it('has nothing to ask where there is one group', () => {
    expect(groupOfNight.list(makeFacts({ groups: [['All', range(1, 17).map(String)]] }))).toEqual([]);
  });
});
