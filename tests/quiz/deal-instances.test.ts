import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Diagnostic } from '../../src/content/diagnostic.ts';
import { dealInstances } from '../../src/quiz/deal-instances.ts';
import type { ComputedSource, QuizFacts } from '../../src/quiz/model.ts';
import type { Level, QuestionInstance } from '../../src/quiz/questions/question-instance.ts';
import type { ComputedKind } from '../../src/quiz/questions/question-kinds.ts';
import { countUp } from './expect-uniform.ts';
import { THIRTY_NAMES } from './fake-almanac.ts';
import { computed, makeFacts, only } from './quiz-helpers.ts';

/** Level 1 is up to Thursday 30 July, three nights from the Monday of the lesson; level 2 goes on from there. */
const TEN_DAYS = makeFacts({}, { to: '2026-08-05' });

function dealTo(groups: number, sources: readonly ComputedSource[], facts: QuizFacts = TEN_DAYS, seed = 'seed') {
  const diagnostics: Diagnostic[] = [];
  const dealt = dealInstances(sources, groups, facts, seed, (diagnostic) => diagnostics.push(diagnostic));
  return { hands: sources.map((source) => dealt.get(source) ?? []), diagnostics };
}

const levelsOf = (hand: readonly QuestionInstance[]) => [...new Set(hand.map(({ level }) => level))];
const countDifferent = (hand: readonly QuestionInstance[]) => new Set(hand.map(({ asks }) => asks)).size;
const datesOf = (hand: readonly QuestionInstance[]) => hand.flatMap(({ about }) => about.dates);

describe('levels', () => {
  it('are those asked for', () => {
    for (const level of [1, 2] as const) {
      const { hands, diagnostics } = dealTo(4, [computed('night-of-date', { level })]);
      expect(diagnostics).toEqual([]);
      expect([countDifferent(only(hands)), levelsOf(only(hands))]).toEqual([4, [level]]);
    }
  });

  it('are the same for all groups where nobody asks for one, and not always the same', () => {
    const seen = new Set<number>();
    for (let seed = 0; seed < 40; seed++) {
      const { hands, diagnostics } = dealTo(4, [computed('night-of-date')], TEN_DAYS, `${seed}`);
      expect(diagnostics).toEqual([]);
      seen.add(only(levelsOf(only(hands))));
    }
    expect([...seen].sort()).toEqual([1, 2]);
  });

  it('differ, with a warning, where no level has enough different questions', () => {
    const source = computed('night-of-date');
    const { hands, diagnostics } = dealTo(7, [source]);
    expect(countDifferent(only(hands))).toBe(7);
    expect(levelsOf(only(hands)).sort()).toEqual([1, 2]);
    expect(only(diagnostics)).toMatchObject({ severity: 'warning', place: source.place, found: '6', expected: '7' });
    expect(only(diagnostics).message).toBe(
      '`ask=night-of-date` has `6` different questions of one level from `2026-07-27` to `2026-08-05`, expected `7`, one a group; groups get levels `1` to `2`, so give it more time (`within=month`), or give `level` and let some groups have the same.',
    );
  });

  it('are kept, with a warning, where one is asked for that has too few', () => {
    const { hands, diagnostics } = dealTo(7, [computed('night-of-date', { level: 1 })]);
    expect([countDifferent(only(hands)), levelsOf(only(hands))]).toEqual([4, [1]]);
    expect(only(diagnostics)).toMatchObject({ severity: 'warning', found: '4', expected: '7' });
    expect(only(diagnostics).message).toMatch(/^`ask=night-of-date level=1` has `4` different questions/);
  });
});

describe('a question that is narrowed', () => {
  it('asks about its night, its day and its dates only', () => {
    const friday = '2026-07-31';
    const week = { from: '2026-07-28', to: '2026-07-31' };
    // Night 18 of the month that began on Tuesday 14 July.
    expect(datesOf(only(dealTo(1, [computed('night-of-date', { night: 18 })]).hands))).toEqual([friday]);
    expect(datesOf(only(dealTo(1, [computed('night-of-date', { on: friday })]).hands))).toEqual([friday]);
    const { hands, diagnostics } = dealTo(4, [computed('night-of-date', { within: week })]);
    expect(diagnostics.map(({ found }) => found)).toEqual(['3']);
    expect(datesOf(only(hands)).sort()).toEqual(['2026-07-28', '2026-07-29', '2026-07-30', '2026-07-31']);
  });

  it('lists what it has in common with others once', () => {
    let asked = 0;
    const facts: QuizFacts = {
      ...TEN_DAYS,
      almanac: {
        ...TEN_DAYS.almanac,
        nights: (from, to) => {
          asked += 1;
          return TEN_DAYS.almanac.nights(from, to);
        },
      },
    };
    const count = (sources: readonly ComputedSource[], groups: number) => {
      asked = 0;
      dealTo(groups, sources, facts);
      return asked;
    };
    const once = count([computed('night-of-date')], 1);
    expect(once).toBeGreaterThan(0);
    const within = { from: TEN_DAYS.from, to: TEN_DAYS.to };
    const narrowed = [computed('night-of-date', { level: 1 }), computed('night-of-date', { on: '2026-07-31', within })];
    expect(count([computed('night-of-date'), ...narrowed], 30)).toBe(once);
  });

  const without = (...left: readonly number[]) => THIRTY_NAMES.filter((_, place) => !left.includes(place + 1));
  const LEFT_OUT = makeFacts({ months: [without(18, 30), THIRTY_NAMES, THIRTY_NAMES] });

  it.each<[string, ComputedSource, QuizFacts, RegExp]>([
    [
      'no such level',
      computed('night-of-date', { level: 3 }),
      TEN_DAYS,
      /^`ask=night-of-date level=3` finds nothing to ask from `2026-07-27` to `2026-08-05`, expected at least one question; leave `level` out or give another one\.$/,
    ],
    [
      'a night of the month that does not come on the dates',
      computed('night-of-date', { night: 25 }),
      TEN_DAYS,
      /^`ask=night-of-date night="Moon y"` finds nothing.*; `Month 1` has that night on `2026-08-07`, so give another one or `within=month`\.$/,
    ],
    [
      'a night that the month leaves out',
      computed('night-of-date', { night: 18 }),
      LEFT_OUT,
      /night="Moon r"` finds nothing.*; `Month 1` leaves that night out and it next comes on `2026-08-28`, so give another one or more time, as in `within=year`\.$/,
    ],
    [
      'a night that is in the month, but of which this cannot be asked: tonight',
      computed('nights-until', { night: 14 }),
      TEN_DAYS,
      /this `ask` cannot be answered for that night on these dates, so give another night or leave `night` out\.$/,
    ],
    [
      'a day of which this cannot be asked',
      computed('nights-until', { on: '2026-07-27' }),
      TEN_DAYS,
      /^`ask=nights-until on 2026-07-27` finds nothing.*; give another day or leave `on` out\.$/,
    ],
    [
      'dates without nights',
      computed('night-of-date', { within: { from: '2026-07-31', to: '2026-07-27' } }),
      TEN_DAYS,
      /from `2026-07-31` to `2026-07-27`.*; use another `ask` or write the question by hand\.$/,
    ],
  ])('is an error that says why where nothing is left: %s', (_title, source, facts, message) => {
    const { hands, diagnostics } = dealTo(4, [source], facts);
    expect(hands).toEqual([[]]);
    expect(only(diagnostics)).toMatchObject({ rule: 'quiz-question', severity: 'error', place: source.place });
    expect(only(diagnostics).message).toMatch(message);
  });
});

describe('a room', () => {
  it('shares as little as it must where there are more groups than questions', () => {
    const { hands, diagnostics } = dealTo(25, [computed('night-of-date')]);
    const uses = new Map<string, number>();
    for (const { asks } of only(hands)) countUp(uses, asks);
    expect([...uses.values()].sort()).toEqual([2, 2, 2, 2, 2, 3, 3, 3, 3, 3]);
    expect(only(diagnostics)).toMatchObject({ severity: 'warning', found: '10', expected: '25' });
  });

  it('asks no paper for the same fact in two ways, where there are enough', () => {
    for (let seed = 0; seed < 30; seed++) {
      const sources = [computed('night-of-date'), computed('finish-sentence'), computed('date-of-night')];
      const { hands } = dealTo(4, sources, TEN_DAYS, `${seed}`);
      for (const group of [0, 1, 2, 3]) expect(countDifferent(hands.flatMap((hand) => hand[group] ?? []))).toBe(3);
    }
  });

  const kind = fc.constantFrom<ComputedKind>(
    'night-of-date',
    'date-of-night',
    'nights-until',
    'next-in-run',
    'order-nights',
  );
  const asked = fc.record({
    ask: kind,
    level: fc.constantFrom<Level | undefined>(undefined, 1, 2, 3),
    wide: fc.boolean(),
  });

  it('never asks a paper the same twice, and is of one level and all different unless it is told otherwise', () => {
    const wide = { from: '2026-07-14', to: '2026-08-11' };
    fc.assert(
      fc.property(
        fc.array(asked, { maxLength: 6 }),
        fc.integer({ min: 1, max: 12 }),
        fc.string(),
        (list, groups, seed) => {
          const sources = list.map(({ ask, level, wide: isWide }) =>
            computed(ask, {
              ...(level === undefined ? {} : { level }),
              ...(isWide ? { within: wide } : {}),
            }),
          );
          const { hands, diagnostics } = dealTo(groups, sources, TEN_DAYS, seed);
          for (let group = 0; group < groups; group++) {
            const onPaper = sources.map((source, place) => `${source.ask} ${hands[place]?.[group]?.asks ?? place}`);
            expect(new Set(onPaper).size).toBe(sources.length);
          }
          for (const [place, source] of sources.entries()) {
            const hand = hands[place] ?? [];
            const told = diagnostics.filter((each) => each.place === source.place);
            expect(hand.length).toBe(told.some(({ severity }) => severity === 'error') ? 0 : groups);
            if (source.level !== undefined && hand.length > 0) expect(levelsOf(hand)).toEqual([source.level]);
            if (told.length > 0) continue;
            expect([countDifferent(hand), levelsOf(hand).length]).toEqual([groups, 1]);
          }
        },
      ),
    );
  });
});
