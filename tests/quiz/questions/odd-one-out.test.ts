import { describe, expect, it } from 'vitest';
import { oddOneOut } from '../../../src/quiz/questions/odd-one-out.ts';
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
  ['Dark', ['one', 'two', 'three']],
  ['Growing', ['four', 'five', 'six', 'seven', 'eight']],
  ['Round', ['nine', 'ten']],
  ['Shrinking', ['eleven', 'twelve', 'thirteen']],
  ['Late', ['fourteen', 'fifteen', 'sixteen']],
] as const;

function makeFacts(more: Parameters<typeof makeNights>[0] = {}) {
  return makeNights({
    groups: GROUPS,
    months: [{ said: range(1, 16) }, { said: range(1, 16) }],
    today: '2026-07-21',
    from: '2026-07-21',
    to: '2026-07-23',
    ...more,
  });
}

describe('odd-one-out', () => {
  it('puts each night beside the other groups of three or more', () => {
    const instances = oddOneOut.list(makeFacts());
    expect(instances.map(({ asks }) => asks)).toEqual([
      ...[1, 4, 5].map((group) => `odd night 8 beside group ${group}`),
      ...[1, 2, 4, 5].flatMap((group) => `odd night 9 beside group ${group}`),
      ...[1, 2, 4, 5].flatMap((group) => `odd night 10 beside group ${group}`),
    ]);
    expect(countLevels(instances)).toEqual([6, 3, 2]);
  });

  it('names the group at first, and then no more', () => {
    const instances = oddOneOut.list(makeFacts());
    const far = requireQuestion(instances, 'odd night 8 beside group 5');
    expect([far.level, readPrompt(far)]).toEqual([1, 'Three of these nights belong to Late. Which one does not?']);
    const near = requireQuestion(instances, 'odd night 10 beside group 2');
    expect([near.level, readPrompt(near)]).toEqual([
      2,
      'Three of these nights belong to the same group. Which one does not?',
    ]);
    expect(readAnswer(near)).toBe('ten');
    expect(readSets(near)).toEqual(['five, four, six', 'five, seven, six', 'eight, seven, six']);
    expect(readWorking(near)).toBe(
      'ten belongs to Round. The others belong to Growing: four, five, six, seven, eight.',
    );
  });

  it('stands next to the three at the hardest level', () => {
    const next = requireQuestion(oddOneOut.list(makeFacts()), 'odd night 9 beside group 2');
    expect(next.level).toBe(3);
    expect(readSets(next)).toEqual(['eight, seven, six']);
    expect(readMeanings(next)).toEqual({
      six: 'Does not know Growing yet: this night is in the midst of it.',
      seven: 'Does not know Growing yet: this night is in the midst of it.',
      eight: 'Thinks that Growing ends sooner: this is its last night.',
    });
    // The first night of a month follows on the last: the groups are a ring.
    const over = oddOneOut.list(makeFacts({ from: '2026-07-14', to: '2026-07-14' }));
    expect(requireQuestion(over, 'odd night 1 beside group 5').level).toBe(3);
  });

  it('asks about a night once, however often it comes', () => {
    const instances = oddOneOut.list(makeFacts({ from: '2026-07-14', to: '2026-08-14' }));
    expect(new Set(instances.map(({ asks }) => asks)).size).toBe(instances.length);
    expect(requireQuestion(instances, 'odd night 9 beside group 1').about.dates).toEqual(['2026-07-22']);
  });

  it('leaves out names and groups that are there twice, and small groups', () => {
    const groups = [
      ['Dark', ['one', 'two', 'three']],
      ['Growing', ['four', 'five', 'ONE', 'seven']],
      ['dark', ['eight', 'nine', 'ten']],
      ['Late', ['eleven', 'twelve', 'thirteen']],
    ] as const;
    const facts = makeFacts({ groups, months: [{ said: range(1, 13) }], from: '2026-07-14', to: '2026-07-26' });
    expect(oddOneOut.list(facts).map(({ asks }) => asks)).toEqual(
      [4, 5, 7].map((night) => `odd night ${night} beside group 4`),
    );
    const ones = makeFacts({ groups: range(1, 16).map((number) => [`Group ${number}`, [`${number}`]] as const) });
    expect(oddOneOut.list(ones)).toEqual([]);
  });
});
