import { describe, expect, it } from 'vitest';
import { orderNights } from '../../../src/quiz/questions/order-nights.ts';
import { makeNights, range } from './fake-nights.ts';
import { countLevels, readAnswer, readPrompt, readWorking, requireQuestion, takeQuestion } from './read-question.ts';

describe('order-nights', () => {
  it('asks for four in a row, four with others between, and two mirrored pairs', () => {
    const instances = orderNights.list(makeNights());
    const texts = [1, 2, 3].map((level) =>
      instances.filter((instance) => instance.level === level).map((instance) => readAnswer(instance)),
    );
    expect(texts[0]?.slice(0, 2)).toEqual(['Elm b, Elm c, Fen a, Fen b', 'Elm c, Fen a, Fen b, Fen c']);
    expect(texts[1]?.slice(0, 3)).toEqual([
      'Elm b, Fen a, Fen b, Gum a',
      'Elm c, Fen a, Gum a, Gum b',
      'Fen a, Gum a, Gum b, Hay a',
    ]);
    expect(texts[2]?.at(-1)).toBe('Cob a, Cob b, Hay b, Hay c');
    expect(readPrompt(takeQuestion(instances, 0))).toBe('Put these nights in the order in which they come in Month 1.');
    expect(readWorking(takeQuestion(instances, 0))).toBe(
      'In this order: Elm b is night 14, Elm c is night 15, Fen a is night 16, Fen b is night 17.',
    );
    expect(takeQuestion(instances, 0).about).toEqual({
      nights: [14, 15, 16, 17],
      dates: ['2026-07-27', '2026-07-28', '2026-07-29', '2026-07-30'],
    });
  });

  it('asks the same pairs once', () => {
    const instances = orderNights.list(makeNights({ from: '2026-07-14', to: '2026-08-11' }));
    expect(new Set(instances.map(({ asks }) => asks)).size).toBe(instances.length);
    expect(new Set(instances.map(readAnswer)).size).toBe(instances.length);
  });

  it('begins with a date where the month ends between', () => {
    const instances = orderNights.list(makeNights({ today: '2026-08-10', from: '2026-08-10', to: '2026-08-13' }));
    const over = requireQuestion(instances, 'Begin with');
    expect(readPrompt(over)).toBe(
      'Put these nights in the order in which they come. Begin with the night of Monday 10 August (from sunset on).',
    );
    expect(readAnswer(over)).toBe('Jay a, Jay b, Ash a, Ash b');
    expect(over.level).toBe(3);
    expect(readWorking(over)).toBe(
      'In this order: Jay a is night 28, Jay b is night 29, Ash a is night 1, Ash b is night 2. ' +
        'Month 1 has 29 nights; the next month begins with Ash a.',
    );
  });

  it('leaves out names that are said twice, and knows a left-out name as a trap', () => {
    const said = [...range(1, 14), 14, ...range(15, 17), ...range(19, 29)];
    const instances = orderNights.list(makeNights({ months: [{ said }] }));
    const answers = instances.map(readAnswer);
    expect(answers.join()).not.toContain('Elm b');
    expect(requireQuestion(instances, 'order of 2026-07-30, 2026-07-31, 2026-08-01, 2026-08-02').level).toBe(3);
    expect(answers).toContain('Fen a, Fen b, Gum a, Gum b');
  });

  it('has no order where a name comes again before the last', () => {
    const groups = [['All', ['one', 'two', 'three', 'ONE', 'five', 'six']]] as const;
    const facts = makeNights({
      groups,
      months: [{ said: range(1, 6) }, { said: range(1, 6) }],
      today: '2026-07-14',
      from: '2026-07-14',
      to: '2026-07-25',
    });
    for (const instance of orderNights.list(facts)) {
      if (instance.kind !== 'order') throw new Error('An order question has items.');
      expect(
        readAnswer(instance)
          .toLowerCase()
          .split(', ')
          .filter((name) => name === 'one').length,
      ).toBeLessThan(2);
      if (readPrompt(instance).includes('in Month')) expect(readAnswer(instance).toLowerCase()).not.toContain('one');
    }
    expect(countLevels(orderNights.list(facts))[2]).toBeGreaterThan(0);
  });

  it('has nothing to ask where four nights are not there', () => {
    expect(
      orderNights
        .list(makeNights({ from: '2026-08-12', to: '2026-08-13', today: '2026-08-12' }))
        .filter(({ level }) => level < 3),
    ).toEqual([]);
    const facts = makeNights({
      groups: [['All', ['one', 'two', 'three']]],
      months: [{ said: [1, 2, 3] }],
      today: '2026-07-14',
    });
    expect(orderNights.list({ ...facts, from: '2026-07-14', to: '2026-07-16' })).toEqual([]);
  });
});
