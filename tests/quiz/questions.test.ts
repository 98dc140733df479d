import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { NightRecord } from '../../src/calendar/almanac-types.ts';
import { readText } from '../../src/quiz/fold-text.ts';
import type { QuizFacts } from '../../src/quiz/model.ts';
import type { QuestionInstance } from '../../src/quiz/questions/question-instance.ts';
import { QUESTION_KINDS } from '../../src/quiz/questions/question-kinds.ts';
import { THIRTY_NAMES } from './fake-almanac.ts';
import { makeFacts, only, taggedNames, WEEK } from './quiz-helpers.ts';

const LANGUAGE = 'x-fake';

function prompts(instances: readonly QuestionInstance[]): string[] {
  return instances.map((instance) => readText(instance.renderPrompt()));
}

function answerOf(instance: QuestionInstance): string {
  return instance.kind === 'line' ? instance.writeAnswer() : instance.right;
}

function workingOf(instance: QuestionInstance, set = 0): string {
  return readText(
    instance.kind === 'line' ? instance.renderWorking() : instance.renderWorking(instance.listWrongSets()[set] ?? []),
  );
}

function findByPrompt(instances: readonly QuestionInstance[], part: string): QuestionInstance {
  return only(instances.filter((instance) => readText(instance.renderPrompt()).includes(part)));
}

/** Months of 28 to 32 nights in which some names are left out and some said twice; the first name always comes first. */
const anyFacts: fc.Arbitrary<QuizFacts> = fc
  .record({
    months: fc.array(
      fc.record({
        leftOut: fc.uniqueArray(fc.integer({ min: 1, max: 29 }), { maxLength: 3 }),
        twice: fc.uniqueArray(fc.integer({ min: 0, max: 29 }), { maxLength: 2 }),
      }),
      { minLength: 3, maxLength: 3 },
    ),
    dayBegins: fc.constantFrom('sunset' as const, 'midnight' as const, 'sunrise' as const),
    today: fc.integer({ min: 1, max: 28 }),
  })
  .map(({ months, dayBegins, today }) => {
    const said = months.map(({ leftOut, twice }) =>
      THIRTY_NAMES.flatMap((name, place) =>
        leftOut.includes(place) ? [] : twice.includes(place) ? [name, name] : [name],
      ),
    );
    const date = `2026-07-${String(today).padStart(2, '0')}`;
    return makeFacts(
      { months: said, dayBegins, firstDate: '2026-06-20' },
      { today: date, from: '2026-07-13', to: '2026-07-19' },
    );
  });

/** The second path to an answer: the plain list of nights, date after date, and nothing but their names and dates. */
function scanNights(facts: QuizFacts): NightRecord[] {
  return [...facts.almanac.nights('2026-01-01', '2026-12-31')];
}

describe('night-of-date', () => {
  it('asks for each date of the week, in order', () => {
    const instances = QUESTION_KINDS['night-of-date'](makeFacts());
    expect(prompts(instances)).toEqual([
      'Which night is Monday 27 July, from sunset on?',
      'Which night is Tuesday 28 July, from sunset on?',
      'Which night is Wednesday 29 July, from sunset on?',
      'Which night is Thursday 30 July, from sunset on?',
      'Which night is Friday 31 July, from sunset on?',
    ]);
    expect(instances.map(answerOf)).toEqual(['Moon n', 'Moon o', 'Moon p', 'Moon q', 'Moon r']);
  });

  it('says from when on, as the day begins', () => {
    const ask = (dayBegins: 'midnight' | 'sunrise') =>
      prompts(QUESTION_KINDS['night-of-date'](makeFacts({ dayBegins })))[0];
    expect(ask('midnight')).toBe('Which night is Monday 27 July?');
    expect(ask('sunrise')).toBe('Which night is Monday 27 July, from sunrise on?');
  });

  it('works it out aloud', () => {
    const friday = findByPrompt(QUESTION_KINDS['night-of-date'](makeFacts()), 'Friday');
    expect(workingOf(friday, 1)).toBe(
      'Friday 31 July is night 18 of the month: Moon r. The night before is Moon q, the night after is Moon s. ' +
        'Moon q would be too early. Moon s would be too late. Moon m is its mirror in the other half of the month.',
    );
  });

  it('says so when a name is said for two nights, and still has one right answer', () => {
    const months = [[...THIRTY_NAMES.slice(0, 14), 'Moon n', ...THIRTY_NAMES.slice(14, 29)]];
    const instances = QUESTION_KINDS['night-of-date'](makeFacts({ months }));
    expect(instances.map(answerOf).slice(0, 2)).toEqual(['Moon n', 'Moon n']);
    expect(workingOf(findByPrompt(instances, 'Tuesday'))).toContain(
      'Moon n is said for more than one night this month.',
    );
    expect(workingOf(findByPrompt(instances, 'Wednesday'))).not.toContain('more than one night');
  });

  it('has nothing to ask outside its dates, or where a calendar has one name', () => {
    expect(QUESTION_KINDS['night-of-date'](makeFacts({}, { from: '2026-07-31', to: '2026-07-27' }))).toEqual([]);
    expect(
      QUESTION_KINDS['night-of-date'](makeFacts({ names: ['Moon'], months: [Array<string>(29).fill('Moon')] })),
    ).toEqual([]);
  });

  it('leaves out the neighbour that lies outside the years of the almanac', () => {
    const facts = makeFacts({ firstDate: '2026-07-27' });
    expect(workingOf(findByPrompt(QUESTION_KINDS['night-of-date'](facts), 'Monday'))).not.toContain('The night before');
  });
});

describe('nights-until', () => {
  it('counts on from the night of the lesson', () => {
    const instances = QUESTION_KINDS['nights-until'](makeFacts());
    expect(prompts(instances)[0]).toBe('Tonight is Moon n. How many nights until Moon p?');
    expect(instances.map(answerOf)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12].map((count) => `${count} nights`));
    expect(workingOf(findByPrompt(instances, 'Moon p'))).toBe(
      'Count on from tonight, starting with the night after: 1\u00A0Moon o, 2\u00A0Moon p. A learner who counted tonight as well has written 3.',
    );
  });

  it('counts real nights over the end of a month of 29, not names', () => {
    const facts = makeFacts({}, { today: '2026-08-08' });
    const instance = findByPrompt(QUESTION_KINDS['nights-until'](facts), 'until Moon c');
    // The twenty-sixth name tonight; by the thirty names it would be seven.
    expect(answerOf(instance)).toBe('6 nights');
    expect(workingOf(instance)).toContain('Moon ø does not come this time.');
  });

  it('never asks for tonight, nor for the second night of a name', () => {
    const months = [['Moon a', 'Moon b', 'Moon b', 'Moon c', 'Moon c', 'Moon d', ...THIRTY_NAMES.slice(4)]];
    const facts = makeFacts({ months, firstDate: '2026-07-26' });
    const asked = QUESTION_KINDS['nights-until'](facts).map(
      (instance) => taggedNames(instance.renderPrompt(), LANGUAGE)[1],
    );
    expect(asked.slice(0, 2)).toEqual(['Moon c', 'Moon d']);
    expect(answerOf(findByPrompt(QUESTION_KINDS['nights-until'](facts), 'until Moon c'))).toBe('2 nights');
  });

  it('ends with the years of the almanac', () => {
    const facts = makeFacts({ months: [THIRTY_NAMES.slice(0, 17)] });
    expect(QUESTION_KINDS['nights-until'](facts).map(answerOf)).toEqual(['2 nights', '3 nights']);
  });
});

describe('next-in-run', () => {
  it('asks about each night of the month, and ends with the first of the next', () => {
    const instances = QUESTION_KINDS['next-in-run'](makeFacts());
    expect(instances).toHaveLength(29);
    expect(prompts(instances)[0]).toBe('Which night comes after Moon a this month?');
    expect(prompts(instances).at(-1)).toBe('Moon ö is the last night of this month. Which night comes next?');
    expect(instances.at(-1)).toMatchObject({ right: 'Moon a' });
  });

  it('offers the name that a month of 29 nights does not reach, as a wrong option', () => {
    const last = findByPrompt(QUESTION_KINDS['next-in-run'](makeFacts()), 'is the last night');
    if (last.kind !== 'choice') throw new Error('Expected a choice.');
    for (const set of last.listWrongSets()) expect(set[0]).toEqual({ name: 'Moon ø', reason: 'not-reached' });
    const working = workingOf(last);
    expect(working).toContain(
      'After Moon ö comes Moon a. This month has 29 nights; the next month begins with Moon a.',
    );
    expect(working.split('Moon ø does not come this time.')).toHaveLength(2);
  });

  it('does not ask about a name said twice', () => {
    const months = [['Moon a', 'Moon b', 'Moon b', ...THIRTY_NAMES.slice(2, 29)], THIRTY_NAMES];
    const asked = prompts(QUESTION_KINDS['next-in-run'](makeFacts({ months })));
    expect(asked.some((prompt) => prompt.includes('after Moon b'))).toBe(false);
    expect(asked.some((prompt) => prompt.includes('after Moon a'))).toBe(true);
  });
});

describe('every computed question', () => {
  it('has the answer that a plain scan of the nights gives', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        const nights = scanNights(facts);
        for (const instance of QUESTION_KINDS['night-of-date'](facts)) {
          const prompt = readText(instance.renderPrompt());
          const dates = nights.filter(({ date }) => prompt.includes(facts.labels.date(date, 'day')));
          expect(answerOf(instance)).toBe(only(dates).night.name);
        }
        const today = nights.findIndex(({ date }) => date === facts.today);
        for (const instance of QUESTION_KINDS['nights-until'](facts)) {
          const [tonight, asked] = taggedNames(instance.renderPrompt(), LANGUAGE);
          expect(tonight).toBe(nights[today]?.night.name);
          expect(asked).not.toBe(tonight);
          const count = nights.slice(today).findIndex(({ night }) => night.name === asked);
          expect(answerOf(instance)).toBe(`${count} nights`);
        }
        const month = nights[today]?.month.firstDate;
        for (const instance of QUESTION_KINDS['next-in-run'](facts)) {
          const name = only(taggedNames(instance.renderPrompt(), LANGUAGE));
          const after = nights.filter((_, place) => {
            const before = nights[place - 1];
            return before?.month.firstDate === month && before?.night.name === name;
          });
          expect(answerOf(instance)).toBe(only(after).night.name);
        }
      }),
      { numRuns: 60 },
    );
  });

  it('asks for a thing of its own, in words of its own, and tags every name', () => {
    fc.assert(
      fc.property(anyFacts, (facts) => {
        for (const list of Object.values(QUESTION_KINDS)) {
          const instances = list(facts);
          expect(new Set(instances.map(({ asks }) => asks)).size).toBe(instances.length);
          expect(new Set(prompts(instances)).size).toBe(instances.length);
          for (const instance of instances.slice(0, 3)) {
            const working =
              instance.kind === 'line'
                ? instance.renderWorking()
                : instance.renderWorking(instance.listWrongSets()[0] ?? []);
            for (const tree of [instance.renderPrompt(), working]) {
              expect(tree.flatMap((node) => (node.type === 'text' ? [node.value] : [])).join('')).not.toContain('Moon');
            }
          }
        }
      }),
      { numRuns: 20 },
    );
  });

  it('comes in a fixed order', () => {
    for (const list of Object.values(QUESTION_KINDS)) {
      expect(list(makeFacts()).map(({ asks }) => asks)).toEqual(list(makeFacts({}, WEEK)).map(({ asks }) => asks));
    }
  });
});
