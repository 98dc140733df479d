import fc from 'fast-check';
import type { ElementContent } from 'hast';
import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../../src/calendar/almanac.ts';
import { foldText, readText } from '../../../src/quiz/fold-text.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import type { QuestionInstance } from '../../../src/quiz/questions/question-instance.ts';
import { QUESTION_KINDS } from '../../../src/quiz/questions/question-kinds.ts';
import { samplePlace, sampleRules } from '../../calendar/sample-rules.ts';
import type { NightKind } from './check-by-rows.ts';
import { type FakeMonth, makeNights, range } from './fake-nights.ts';

/*
 * What every question about nights keeps, whatever the calendar: Haladyna, Downing and Rodriguez, "A Review of
 * Multiple-Choice Item-Writing Guidelines for Classroom Assessment", Applied Measurement in Education 15(3), 2002, from
 * memory: only one right option, wrong ones made of typical errors (here each says which), none that overlap.
 */

const KINDS: readonly NightKind[] = [
  ...(['night-of-date', 'date-of-night', 'nights-until', 'next-in-run', 'before-in-run', 'group-of-night'] as const),
  ...(['beats-in-group', 'order-nights', 'odd-one-out', 'month-of-date', 'months-in-year', 'finish-sentence'] as const),
];

/** A sign that all names of these calendars have, and no words of the kit. */
const SIGN = '\u25C7';

const nameParts = fc.constantFrom(
  'Eel',
  'EEL',
  'eel ',
  'Gull',
  'Reed',
  'ירח',
  'قمر',
  'Ma\u0304',
  'M\u0101',
  'Fin',
  'A longer name',
);
const names = (count: number) =>
  fc
    .array(fc.tuple(nameParts, fc.nat(12)), { minLength: count, maxLength: count })
    .map((parts) => parts.map(([part, number]) => `${SIGN}${part}${number === 0 ? '' : ` ${number}`}`));

/** A calendar of one to forty names in groups of one and more, many of them alike; months leave names out and say them twice. */
const anyFacts: fc.Arbitrary<QuizFacts> = fc
  .record({
    sizes: fc.array(fc.integer({ min: 1, max: 8 }), { minLength: 1, maxLength: 5 }),
    nightNames: names(40),
    groupNames: names(5),
    monthNames: fc.integer({ min: 12, max: 13 }).chain(names),
    months: fc.array(
      fc.record({
        leftOut: fc.uniqueArray(fc.integer({ min: 2, max: 40 }), { maxLength: 3 }),
        twice: fc.uniqueArray(fc.integer({ min: 1, max: 40 }), { maxLength: 2 }),
        number: fc.integer({ min: 1, max: 13 }),
        intercalary: fc.boolean(),
      }),
      { minLength: 4, maxLength: 6 },
    ),
    hasThirteenth: fc.boolean(),
    dayBegins: fc.constantFrom('sunset' as const, 'midnight' as const, 'sunrise' as const),
    at: fc.constantFrom('conjunction' as const, 'first-crescent' as const, 'full-moon' as const),
    offset: fc.integer({ min: -3, max: 3 }),
    sentence: fc.constantFrom('It is {night}, in {month}.', '{month}: {night} {night}.', '{night}!'),
    today: fc.nat(),
    untold: fc.nat(20),
  })
  .map((drawn) => {
    const run = drawn.nightNames.slice(
      0,
      Math.min(
        drawn.sizes.reduce((sum, size) => sum + size),
        40,
      ),
    );
    let next = 0;
    const groups = drawn.sizes.map((size, place) => {
      const nights = run.slice(next, next + size);
      next += size;
      return [drawn.groupNames[place] ?? SIGN, nights] as const;
    });
    const months = drawn.months.map((month): FakeMonth => {
      const said = range(1, run.length).filter((number) => !month.leftOut.includes(number));
      const name = drawn.monthNames[month.number - 1] ?? SIGN;
      return {
        ...month,
        name,
        said: said.flatMap((number) => (month.twice.includes(number) ? [number, number] : [number])),
      };
    });
    const nights = months.reduce((sum, { said }) => sum + said.length, 0);
    const day = (place: number) => new Date(Date.UTC(2026, 6, 14 + place)).toISOString().slice(0, 10);
    const today = drawn.today % nights;
    // A month is told as a whole or not at all.
    const begins = months.map((_, place) => months.slice(0, place).reduce((sum, { said }) => sum + said.length, 0));
    const dark = months[drawn.untold]?.said.map((_, place) => (begins[drawn.untold] ?? 0) + place) ?? [];
    return makeNights({
      ...drawn,
      groups,
      months,
      monthBegins: { at: drawn.at, offset: drawn.offset },
      ...(drawn.hasThirteenth && { thirteenthMonth: { name: `${SIGN}Extra`, after: 12 } }),
      today: day(today),
      from: day(today - 3),
      to: day(today + 12),
      untold: dark.includes(today) ? [] : dark.map(day),
      firstDate: '2026-07-14',
      language: 'x-fake',
    });
  });

/** Texts outside any tagged name. */
function readUntagged(content: readonly ElementContent[]): string {
  return content
    .map((node) => {
      if (node.type === 'text') return node.value;
      return node.type === 'element' && node.properties['lang'] === undefined ? readUntagged(node.children) : '';
    })
    .join('');
}

/** All trees of a question, what is wrong included. */
function listTrees(instance: QuestionInstance): (readonly ElementContent[])[] {
  const shared = [instance.renderPrompt(), instance.renderWorking()];
  switch (instance.kind) {
    case 'choice':
      return [
        ...shared,
        instance.renderRight(),
        ...instance.listWrongSets().flatMap((set) => set.flatMap(({ content, means }) => [content, means])),
      ];
    case 'line':
      return [...shared, ...instance.listAnswers(), ...instance.listSlips().map(({ means }) => means)];
    case 'order':
      return [...shared, ...instance.renderItems()];
    default:
      return shared;
  }
}

function fold(content: readonly ElementContent[]): string {
  return foldText(readText(content));
}

function expectAllDifferent(texts: readonly string[], of: string): void {
  expect(new Set(texts).size, `${of}: ${texts.join(' | ')}`).toBe(texts.length);
}

function expectSound(instance: QuestionInstance): void {
  for (const tree of listTrees(instance)) {
    expect(readText(tree), instance.asks).not.toBe('');
    expect(readUntagged(tree), instance.asks).not.toContain(SIGN);
  }
  if (instance.kind === 'choice') {
    const sets = instance.listWrongSets();
    expect(sets.length, instance.asks).toBeGreaterThan(0);
    for (const set of sets) {
      expect(set.length, instance.asks).toBeGreaterThan(0);
      expectAllDifferent([fold(instance.renderRight()), ...set.map(({ content }) => fold(content))], instance.asks);
    }
  }
  if (instance.kind === 'line') {
    expectAllDifferent(
      [...instance.listAnswers().map(fold), ...instance.listSlips().map(({ answer }) => answer)],
      instance.asks,
    );
    expect(Number(readText(instance.listAnswers()[0] ?? []))).toBeGreaterThan(0);
  }
  if (instance.kind === 'order') {
    expect(instance.renderItems().length).toBe(4);
    expectAllDifferent(instance.renderItems().map(fold), instance.asks);
  }
}

function pickSome(instances: readonly QuestionInstance[]): QuestionInstance[] {
  const step = Math.ceil(instances.length / 8);
  return instances.filter((_, place) => place % step === 0);
}

describe.each(KINDS)('%s', (kind) => {
  const { list, levels, about } = QUESTION_KINDS[kind];

  it('keeps the rules on any calendar', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const instances = list(facts);
        expectAllDifferent(
          instances.map(({ asks }) => asks),
          kind,
        );
        for (const instance of pickSome(instances)) expectSound(instance);
      }),
      { numRuns: 40 },
    );
  });

  it('makes new trees each time, and the same ones', () => {
    for (const instance of pickSome(list(makeNights()))) {
      const [first, second] = [listTrees(instance), listTrees(instance)];
      expect(second).toEqual(first);
      for (const [place, tree] of first.entries()) expect(second[place]?.[0]).not.toBe(tree[0]);
    }
    expect(list(makeNights()).map(({ asks }) => asks)).toEqual(list(makeNights()).map(({ asks }) => asks));
  });

  it('says what it asks and what its levels are', () => {
    expect(about).toMatch(/[.?]$/);
    expect(new Set(levels).size).toBe(3);
  });

  it('has questions on an ordinary week', () => {
    const long = range(1, 40).map((place) => ({
      said: range(1, place % 2 === 0 ? 29 : 30),
      number: ((place - 1) % 12) + 1,
      year: 2026 + Math.floor((place - 1) / 12),
    }));
    expect(list(makeNights({ months: long, today: '2027-12-01', from: '2027-11-29' })).length).toBeGreaterThan(4);
  });

  it('leaves out what cannot be told beyond the polar circle', () => {
    const rules = sampleRules({ monthBegins: { at: 'first-crescent', offset: 0, visibility: 'B' } });
    const almanac = createAlmanac(rules, samplePlace(70, 20, 'Europe/Oslo'));
    const facts = { ...makeNights(), almanac, today: '2027-02-10', from: '2027-01-25', to: '2027-02-16' };
    const instances = list(facts);
    for (const instance of pickSome(instances)) expectSound({ ...instance });
    expect(instances.flatMap(({ about: { dates } }) => dates).filter((date) => date < '2027-02-08')).toEqual([]);
  });

  it('passes over the date that Apia left out', () => {
    const almanac = createAlmanac(sampleRules(), samplePlace(-13.8, -171.8, 'Pacific/Apia'));
    const facts = { ...makeNights(), almanac, today: '2011-12-28', from: '2011-12-27', to: '2012-01-02' };
    const instances = list(facts);
    expect(instances.length).toBeGreaterThan(0);
    for (const instance of pickSome(instances)) {
      expectSound(instance);
      expect(listTrees(instance).map(readText).join(' ')).not.toContain('30 December');
    }
  });

  it('goes to the last date of the almanac', () => {
    const almanac = createAlmanac(sampleRules(), samplePlace(-41.1, 174.2, 'Pacific/Auckland'));
    const facts = { ...makeNights(), almanac, today: '2200-12-30', from: '2200-12-27', to: '2200-12-31' };
    for (const instance of pickSome(list(facts))) expectSound(instance);
  });
});
