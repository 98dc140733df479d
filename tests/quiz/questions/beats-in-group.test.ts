import { describe, expect, it } from 'vitest';
import { beatsInGroup } from '../../../src/quiz/questions/beats-in-group.ts';
import { makeNights, range } from './fake-nights.ts';
import { countLevels, readAnswer, readMeanings, readPrompt, readWorking, requireQuestion } from './read-question.ts';

const GROUPS = [
  ['Dark', ['one', 'two']],
  ['Growing', ['three', 'four', 'five', 'six', 'seven']],
  ['Round', ['eight']],
] as const;

function makeFacts(more: Parameters<typeof makeNights>[0] = {}) {
  return makeNights({
    groups: GROUPS,
    months: [{ said: [1, 2, 3, 4, 4, 5, 6, 8] }, { said: range(1, 7) }],
    today: '2026-07-17',
    from: '2026-07-16',
    to: '2026-07-21',
    ...more,
  });
}

describe('beats-in-group', () => {
  it('counts the names of each group', () => {
    const instances = beatsInGroup.list(makeFacts());
    const growing = requireQuestion(instances, 'Each name of Growing');
    expect(readPrompt(growing)).toBe('Each name of Growing is said on one beat. How many beats are there?');
    expect(growing).toMatchObject({ unit: 'beats', level: 1, about: { nights: [3, 4, 5, 6, 7] } });
    expect(growing.about.dates).toEqual(['2026-07-16', '2026-07-17', '2026-07-18', '2026-07-19', '2026-07-20']);
    expect(readAnswer(growing)).toBe('5');
    expect(readMeanings(growing)).toEqual({
      10: 'Counted the count-in as well.',
      6: 'Counted the first night of the next group as well.',
      4: 'Left out the first or the last night of the group.',
      2: 'Counted another group: Dark.',
      1: 'Counted another group: Round.',
    });
    expect(readWorking(growing)).toBe('Growing: 1 three, 2 four, 3 five, 4 six, 5 seven; 5 beats.');
  });

  it('counts the nights of a month, where names are left out or said twice', () => {
    const instances = beatsInGroup.list(makeFacts());
    expect(countLevels(instances)).toEqual([3, 2, 1]);
    const growing = requireQuestion(instances, 'belong to Growing');
    expect(readPrompt(growing)).toBe('How many nights of Month 1 belong to Growing?');
    // As many as there are names, but not the same: `four` is said twice and `seven` left out.
    expect(readAnswer(growing)).toBe('5');
    expect(growing.level).toBe(3);
    expect(readWorking(growing)).toBe(
      'Growing this time: 1 three, 2 four, 3 four, 4 five, 5 six; 5 nights. ' +
        'four is said for more than one night this month. seven does not come this time.',
    );
  });

  it('knows who went by the list, and asks for each month of the dates', () => {
    const instances = beatsInGroup.list(
      makeFacts({ months: [{ said: [1, 2, 3, 4, 5, 8] }, { said: range(1, 8) }], to: '2026-07-25' }),
    );
    expect(readMeanings(requireQuestion(instances, 'nights of group 2 in 2026-07-14'))).toEqual({
      5: 'Counted the names of the list, not the nights that come.',
      4: 'Counted the first night of the next group as well.',
      2: 'Left out the first or the last night of the group.',
      1: 'Counted another group: Round.',
    });
    expect(readAnswer(requireQuestion(instances, 'nights of group 2 in 2026-07-20'))).toBe('5');
  });

  it('asks about no group that does not come, nor one whose name another has', () => {
    const without = beatsInGroup.list(makeFacts({ months: [{ said: range(1, 7) }] }));
    expect(without.map(({ asks }) => asks)).not.toContain('nights of group 3 in 2026-07-14');
    const groups = [
      ['Dark', ['one', 'two']],
      ['DARK', ['three', 'four', 'five', 'six', 'seven', 'eight']],
    ] as const;
    expect(beatsInGroup.list(makeFacts({ groups }))).toEqual([]);
  });

  it('asks about no month beside one of the same name', () => {
    const months = [
      { said: range(1, 8), name: 'Wool' },
      { said: range(1, 7), name: 'WOOL' },
    ];
    expect(countLevels(beatsInGroup.list(makeFacts({ months })))).toEqual([3, 0, 0]);
  });

  it('counts one group of all names', () => {
    const facts = makeFacts({ groups: [['All', range(1, 8).map(String)]] });
    const all = requireQuestion(beatsInGroup.list(facts), 'beats of group 1');
    expect(readAnswer(all)).toBe('8');
    expect(Object.keys(readMeanings(all))).toEqual(['7', '9', '16']);
  });
});
