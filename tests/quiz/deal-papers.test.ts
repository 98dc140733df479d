import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { foldText, readText } from '../../src/quiz/fold-text.ts';
import type { LearnerPaper, LetteredContent, QuestionSource, QuizSheet } from '../../src/quiz/model.ts';
import { expectUniform } from './expect-uniform.ts';
import {
  answersOf,
  choice,
  computed,
  deal,
  lettersOf,
  makeFacts,
  only,
  optionTexts,
  pairUp,
  short,
  text,
} from './quiz-helpers.ts';

const SUN = choice('Where does the light of the Moon come from?', ['+the Sun', 'the sea', 'the Moon burns'], {
  working: 'The Moon is a dark ball of rock and shines back sunlight.',
});
const SEVERAL = choice('Which can be seen by day?', ['+a half Moon', '+the Sun', 'the new Moon', 'Mars']);
const SHORT = short('What is the first night called?', ['Moon a', 'moon A', 'the first moon'], {
  working: 'Say it aloud.',
});
const COMPUTED = [computed('night-of-date'), computed('nights-until'), computed('next-in-run')];
const ALL = [SUN, SEVERAL, SHORT, ...COMPUTED];

const order = (items: readonly string[]): QuestionSource => ({
  kind: 'order',
  place: SUN.place,
  prompt: text('In which order?'),
  items: items.map(text),
});

const match = (pairs: readonly (readonly [string, string])[]): QuestionSource => ({
  kind: 'match',
  place: SUN.place,
  prompt: text('Which belong together?'),
  headings: [text('Left'), text('Right')],
  pairs: pairs.map(([left, right]) => ({ left: text(left), right: text(right) })),
});

/** A paper as JSON without the order in which it shows what is shuffled. */
function forgetOrder(paper: LearnerPaper): string {
  return JSON.stringify(paper, (key, value: unknown) => {
    if (!['options', 'items', 'right'].includes(key) || !Array.isArray(value)) return value;
    const letters = value.map(({ letter }: LetteredContent) => letter);
    const contents = value.map(({ content }: LetteredContent) => JSON.stringify(content));
    return [letters, contents.sort()];
  });
}

/** Every object and list of a value, itself too. */
function listObjects(value: unknown): object[] {
  if (typeof value !== 'object' || value === null) return [];
  return [value, ...Object.values(value).flatMap(listObjects)];
}

function promptTexts(sheet: QuizSheet, place: number): string[] {
  return sheet.papers.map((paper) => readText(paper.questions[place]?.prompt ?? []));
}

describe('dealPapers', () => {
  it('gives each group a paper and a key with the same kinds and marks', () => {
    const facts = makeFacts({}, { to: '2026-08-10' });
    const { sheet, diagnostics } = deal({ sources: ALL, minutes: 12, facts });
    expect(diagnostics).toEqual([]);
    expect(sheet).toMatchObject({ title: 'Which night?', number: 1, minutes: 12 });
    expect(sheet.papers.map(({ group }) => group)).toEqual(['Heron', 'Oyster', 'Kelp', 'Driftwood']);
    expect(sheet.key.map(({ group }) => group)).toEqual(['Heron', 'Oyster', 'Kelp', 'Driftwood']);
    for (const [place, paper] of sheet.papers.entries()) {
      expect(paper).toMatchObject({ title: 'Which night?', minutes: 12, totalMarks: 7 });
      expect(sheet.key[place]?.totalMarks).toBe(7);
      expect(paper.questions.map(({ number, marks }) => [number, marks])).toEqual([
        [1, 1],
        [2, 2],
        [3, 1],
        [4, 1],
        [5, 1],
        [6, 1],
      ]);
      expect(paper.questions.map(({ space }) => space.kind)).toEqual([
        'options',
        'options',
        'line',
        'options',
        'line',
        'options',
      ]);
      expect(paper.questions.map(({ space }) => space.kind === 'options' && space.several)).toEqual([
        false,
        true,
        false,
        false,
        false,
        false,
      ]);
      expect(paper.questions[4]?.space).toEqual({ kind: 'line', unit: 'nights' });
      expect(paper.questions[2]?.space).toEqual({ kind: 'line' });
    }
    expect('minutes' in deal({ sources: ALL }).sheet).toBe(false);
  });

  it('keeps the marks that the author gave', () => {
    const sources = [
      choice('Q', ['+a', '+b', 'c'], { marks: 5 }),
      short('Q', ['a'], { marks: 2 }),
      computed('nights-until', { marks: 3 }),
    ];
    const { sheet } = deal({ sources });
    expect(sheet.papers[0]?.questions.map(({ marks }) => marks)).toEqual([5, 2, 3]);
    expect(sheet.key[0]?.answers.map(({ marks }) => marks)).toEqual([5, 2, 3]);
  });

  it('answers short questions in the key with each spelling once, names tagged, and the working', () => {
    const answer = only(pairUp(deal({ sources: [SHORT], groups: ['Heron'] }).sheet)).answer;
    expect(answer).toMatchObject({ expected: { kind: 'line' }, working: text('Say it aloud.') });
    expect(answersOf(answer)).toEqual([
      [{ type: 'element', tagName: 'span', properties: { lang: 'x-fake' }, children: text('Moon a') }],
      text('the first moon'),
    ]);
  });

  it('letters the right options in the key, and never has two equal options', () => {
    fc.assert(
      fc.property(fc.string(), fc.integer({ min: 1, max: 6 }), (seed, groups) => {
        const { sheet } = deal({
          sources: ALL,
          seed,
          groups: Array.from({ length: groups }, (_, place) => `G${place}`),
        });
        for (const { question, answer } of pairUp(sheet)) {
          expect(readText(answer.prompt)).toBe(readText(question.prompt));
          if (question.space.kind !== 'options') {
            expect(lettersOf(answer)).toEqual([]);
            continue;
          }
          const { options, several } = question.space;
          expect(options.map(({ letter }) => letter).join('')).toBe('ABCDEFGH'.slice(0, options.length));
          const lettered = options.filter(({ letter }) => lettersOf(answer).includes(letter));
          expect(lettered.map(({ content }) => readText(content))).toEqual(answersOf(answer).map(readText));
          expect(lettersOf(answer)).toHaveLength(several ? 2 : 1);
          expect(new Set(optionTexts(question).map(foldText)).size).toBe(options.length);
        }
        // The author's own marks are the second path.
        for (const { answer } of pairUp(sheet).filter(({ question }) => question.number === 1)) {
          expect(answersOf(answer).map(readText)).toEqual(['the Sun']);
        }
        for (const { answer } of pairUp(sheet).filter(({ question }) => question.number === 2)) {
          expect(answersOf(answer).map(readText).toSorted()).toEqual(['a half Moon', 'the Sun']);
        }
      }),
      { numRuns: 30 },
    );
  });

  it('deals the same papers from the same seed, and others from another', () => {
    fc.assert(
      fc.property(fc.string(), (seed) => {
        expect(JSON.stringify(deal({ sources: ALL, seed }).sheet)).toBe(
          JSON.stringify(deal({ sources: ALL, seed }).sheet),
        );
      }),
      { numRuns: 10 },
    );
    const sheets = ['1', '2', '3', '4', '5'].map((seed) => JSON.stringify(deal({ sources: ALL, seed }).sheet));
    expect(new Set(sheets).size).toBe(5);
  });

  it('never deals two groups the same paper, nor the same computed question', () => {
    const facts = makeFacts({}, { to: '2026-08-10' });
    const names = fc
      .integer({ min: 2, max: 5 })
      .map((count) => Array.from({ length: count }, (_, place) => `G${place}`));
    fc.assert(
      fc.property(names, fc.string(), (groups, seed) => {
        const { sheet, diagnostics } = deal({ sources: ALL, groups, seed, facts });
        expect(diagnostics).toEqual([]);
        const questions = sheet.papers.map((paper) => JSON.stringify(paper.questions));
        expect(new Set(questions).size).toBe(groups.length);
        for (const place of [3, 4, 5]) expect(new Set(promptTexts(sheet, place)).size).toBe(groups.length);
      }),
      { numRuns: 30 },
    );
  });

  it('gives a group the same paper however many groups there are', () => {
    const first = (groups: string[]) => deal({ sources: [SUN, SEVERAL], groups }).sheet.papers[0];
    expect(first(['Heron', 'Oyster', 'Kelp'])).toEqual(first(['Heron']));
  });

  it('deals an empty sheet for no groups, and papers without questions for no sources', () => {
    expect(deal({ sources: ALL, groups: [] })).toMatchObject({ sheet: { papers: [], key: [] }, diagnostics: [] });
    expect(deal({ sources: [] }).sheet.papers[0]).toMatchObject({ questions: [], totalMarks: 0 });
  });
});

describe('what is put in order or matched', () => {
  const letterTexts = (parts: readonly LetteredContent[]) =>
    new Map(parts.map(({ letter, content }) => [letter, readText(content)]));
  const items = ['first', 'second', 'third', 'fourth', 'fifth'];
  const pairs = [
    ['one', 'un'],
    ['two', 'deux'],
    ['three', 'trois'],
  ] as const;
  const { sheet } = deal({ sources: [order(items), match(pairs), order(['a', 'b'])] });

  it('is never shown solved, and the key names the letters of each paper', () => {
    for (const { question, answer } of pairUp(sheet).filter(({ answer: { expected } }) => expected.kind === 'order')) {
      if (question.space.kind !== 'order' || answer.expected.kind !== 'order') throw new Error('No order.');
      const shown = letterTexts(question.space.items);
      const right = question.number === 1 ? items : ['a', 'b'];
      expect([...shown.keys()].join('')).toBe('ABCDE'.slice(0, right.length));
      expect([...shown.values()]).not.toEqual(right);
      expect(answer.expected.items.map(({ letter }) => shown.get(letter))).toEqual(right);
      expect(answer.expected.items.map(({ content }) => readText(content))).toEqual(right);
    }
    for (const { question, answer } of pairUp(sheet).filter(({ question: { number } }) => number === 2)) {
      if (question.space.kind !== 'match' || answer.expected.kind !== 'match') throw new Error('No match.');
      const shown = letterTexts(question.space.right);
      expect(question.space.left.map(readText)).toEqual(['one', 'two', 'three']);
      expect(question.space.headings?.map(readText)).toEqual(['Left', 'Right']);
      expect([...shown.values()]).not.toEqual(['un', 'deux', 'trois']);
      const solved = answer.expected.pairs.map(({ left, right }) => [readText(left), shown.get(right.letter)]);
      expect(solved).toEqual(pairs);
    }
    expect(sheet.papers[0]?.questions.map(({ marks }) => marks)).toEqual([1, 3, 1]);
  });

  it('is in another order for other groups', () => {
    const orders = sheet.papers.map(({ questions: [first] }) => JSON.stringify(first?.space));
    expect(new Set(orders).size).toBeGreaterThan(1);
  });
});

describe('computed questions of a quiz', () => {
  it('differ from group to group where there are enough', () => {
    fc.assert(
      fc.property(
        fc.string(),
        fc.constantFrom('night-of-date' as const, 'nights-until' as const, 'next-in-run' as const),
        (seed, ask) => {
          const facts = makeFacts({}, { to: '2026-08-10' });
          const { sheet, diagnostics } = deal({ sources: [computed(ask)], seed, facts });
          expect(diagnostics).toEqual([]);
          expect(new Set(promptTexts(sheet, 0)).size).toBe(4);
        },
      ),
      { numRuns: 30 },
    );
  });

  it('are never seen twice in the room where there are enough for that', () => {
    const { sheet } = deal({ sources: [computed('next-in-run'), computed('next-in-run'), computed('next-in-run')] });
    expect(new Set([0, 1, 2].flatMap((place) => promptTexts(sheet, place))).size).toBe(12);
  });

  it('are never the same twice on a paper, and differ between groups, where the room must share', () => {
    const { sheet, diagnostics } = deal({
      sources: [computed('night-of-date'), computed('night-of-date'), computed('night-of-date')],
    });
    expect(diagnostics).toEqual([]);
    for (const place of [0, 1, 2]) expect(new Set(promptTexts(sheet, place)).size).toBe(4);
    for (const paper of sheet.papers)
      expect(new Set(paper.questions.map(({ prompt }) => readText(prompt))).size).toBe(3);
  });

  it('ask every group to count about equally far', () => {
    const counts = new Set<number>();
    for (let seed = 0; seed < 60; seed++) {
      const facts = makeFacts({}, { to: '2026-08-10' });
      const sources = [computed('nights-until'), computed('nights-until')];
      const { sheet } = deal({ sources, facts, seed: `${seed}` });
      for (const number of [1, 2]) {
        const answers = pairUp(sheet).filter(({ question }) => question.number === number);
        const nights = answers.map(({ answer }) => Number.parseInt(readText(only(answersOf(answer))), 10));
        expect(Math.max(...nights) - Math.min(...nights)).toBeLessThanOrEqual(3);
        for (const each of nights) counts.add(each);
      }
    }
    expect(counts.size).toBe(11);
  });

  it('cross the end of the month for all groups or for none', () => {
    const facts = makeFacts({}, { today: '2026-08-07', to: '2026-08-20' });
    const seen = new Set<string>();
    for (let seed = 0; seed < 60; seed++) {
      const { sheet } = deal({ sources: [computed('nights-until'), computed('next-in-run')], facts, seed: `${seed}` });
      const counts = sheet.key.map(({ answers }) =>
        Number.parseInt(readText(only(answers[0] === undefined ? [] : answersOf(answers[0]))), 10),
      );
      // Night 25 of 29: after four nights comes the next month.
      const crossing = new Set(counts.map((count) => count > 4));
      expect(crossing.size).toBe(1);
      expect(promptTexts(sheet, 1).join()).not.toContain('last night of this month');
      for (const each of crossing) seen.add(String(each));
    }
    expect([...seen]).toEqual(['true']);
  });

  it('do not ask for a night that a handout names', () => {
    const toldDates = new Set(['2026-07-28', '2026-07-30', '2026-07-31']);
    const facts = { ...makeFacts({}, { to: '2026-08-05' }), toldDates };
    for (let seed = 0; seed < 20; seed++) {
      const { sheet, diagnostics } = deal({ sources: [computed('night-of-date')], facts, seed: `${seed}` });
      expect(diagnostics).toEqual([]);
      expect(promptTexts(sheet, 0).join()).not.toMatch(/Tuesday 28|Thursday 30|Friday 31/);
    }
  });

  it('ask for it after all, with a warning, where nothing else is left', () => {
    const source = computed('night-of-date');
    const facts = { ...makeFacts(), toldDates: new Set([27, 28, 29, 30, 31].map((day) => `2026-07-${day}`)) };
    const { sheet, diagnostics } = deal({ sources: [source], facts });
    expect(only(diagnostics)).toMatchObject({ rule: 'quiz-question', severity: 'warning', place: source.place });
    expect(new Set(promptTexts(sheet, 0)).size).toBe(4);
  });

  it('are shared, with a warning at their place, where there are fewer than groups', () => {
    const source = computed('night-of-date');
    const { sheet, diagnostics } = deal({ sources: [source], groups: ['1', '2', '3', '4', '5', '6', '7'] });
    expect(new Set(promptTexts(sheet, 0)).size).toBe(5);
    expect(only(diagnostics)).toMatchObject({
      rule: 'quiz-question',
      severity: 'warning',
      place: source.place,
      found: '5',
      expected: '7',
    });
  });

  it('are an error where there are none, and are left out', () => {
    const source = computed('night-of-date');
    const facts = makeFacts({}, { from: '2026-07-31', to: '2026-07-27' });
    const { sheet, diagnostics } = deal({ sources: [source, SUN], facts });
    expect(only(diagnostics)).toMatchObject({ rule: 'quiz-question', severity: 'error', place: source.place });
    expect(only(sheet.papers[0]?.questions ?? [])).toMatchObject({ number: 1 });
  });

  it('are an error where a paper would ask the same again', () => {
    const sources = [computed('night-of-date'), computed('night-of-date')];
    const facts = makeFacts({}, { from: '2026-07-27', to: '2026-07-27' });
    const { sheet, diagnostics } = deal({ sources, facts, groups: ['Heron'] });
    expect(only(diagnostics)).toMatchObject({ severity: 'error', place: sources[1]?.place });
    expect(sheet.papers[0]?.questions).toHaveLength(1);
  });

  it('do not ask for tonight where another question says which night it is', () => {
    for (let seed = 0; seed < 20; seed++) {
      const { sheet } = deal({ sources: [computed('night-of-date'), computed('nights-until')], seed: `${seed}` });
      expect(promptTexts(sheet, 0).filter((prompt) => prompt.includes('Monday 27 July'))).toEqual([]);
    }
    const alone = deal({ sources: [computed('night-of-date')], groups: ['1', '2', '3', '4', '5'] });
    expect(promptTexts(alone.sheet, 0).filter((prompt) => prompt.includes('Monday 27 July'))).toHaveLength(1);
  });
});

describe('a faulty handwritten question', () => {
  it('is reported once and left out of every paper', () => {
    const faulty = choice('Q', ['a', 'b']);
    const { sheet, diagnostics } = deal({ sources: [faulty, SUN] });
    expect(only(diagnostics)).toMatchObject({ rule: 'quiz-question', severity: 'error', place: faulty.place });
    for (const paper of sheet.papers) expect(readText(only(paper.questions).prompt)).toContain('light of the Moon');
  });
});

describe('a learner', () => {
  const { sheet } = deal({ sources: ALL });

  it('gets nothing that the type does not name, and the key shares no object with a paper or the source', () => {
    const allowed = new Set([
      'title',
      'group',
      'minutes',
      'introduction',
      'questions',
      'totalMarks',
      'number',
      'prompt',
      'marks',
      'space',
      'kind',
      'several',
      'options',
      'letter',
      'content',
      'unit',
      'type',
      'value',
      'tagName',
      'properties',
      'children',
      'lang',
    ]);
    const objects = listObjects(sheet.papers);
    const names = objects.flatMap((object) => (Array.isArray(object) ? [] : Reflect.ownKeys(object).map(String)));
    expect([...new Set(names)].filter((name) => !allowed.has(name))).toEqual([]);
    const all = [...objects, ...listObjects(sheet.key), ...listObjects(ALL)];
    expect(new Set(all).size).toBe(all.length);
  });

  it('finds right and wrong options built alike', () => {
    for (const { question } of pairUp(sheet)) {
      if (question.space.kind !== 'options') continue;
      const shapes = question.space.options.map((option) =>
        JSON.stringify(option, (key, value: unknown) => (key === 'value' || key === 'letter' ? '' : value)),
      );
      expect(new Set(shapes).size).toBe(1);
    }
  });

  it('finds no working, spelling or count in the papers', () => {
    const papers = JSON.stringify(sheet.papers);
    for (const { answer } of pairUp(sheet)) {
      expect(readText(answer.working).length + lettersOf(answer).length).toBeGreaterThan(0);
      const working = readText(answer.working);
      if (working !== '') expect(papers).not.toContain(working);
    }
    expect(papers).not.toMatch(/\d nights?/);
    expect(papers).not.toContain('the first moon');
  });

  it('gets no tick, position, data or comment that came with the source', () => {
    const position = { start: { line: 7, column: 1 }, end: { line: 7, column: 9 } };
    const source: QuestionSource = {
      kind: 'choice',
      place: { file: 'lesson.md', line: 1, column: 1 },
      prompt: [{ type: 'comment', value: 'the Sun!' }, ...text('Q')],
      options: [
        {
          right: true,
          content: [
            { type: 'element', tagName: 'input', properties: { type: 'checkbox', checked: true }, children: [] },
            {
              type: 'element',
              tagName: 'em',
              properties: { className: ['x'] },
              children: text('Sun'),
              position,
              data: {},
            },
          ],
        },
        { right: false, content: [{ type: 'text', value: 'sea', position }] },
      ],
    };
    const papers = JSON.stringify(deal({ sources: [source] }).sheet.papers);
    expect(papers).not.toMatch(/position|data|checked|input|comment/);
    expect(papers).toContain('"className":["x"]');
  });

  it('finds the right option in each place equally often: over 5,000 papers, in every question', () => {
    const sources = [choice('Q', ['+a', 'b', 'c', 'd']), computed('next-in-run'), choice('R', ['a', 'b', '+c'])];
    const counts = [
      [0, 0, 0, 0],
      [0, 0, 0, 0],
      [0, 0, 0],
    ];
    for (let seed = 0; seed < 1250; seed++) {
      for (const { question, answer } of pairUp(deal({ sources, seed: `lesson/${seed}` }).sheet)) {
        const place = 'ABCD'.indexOf(only(lettersOf(answer)));
        const row = counts[question.number - 1] ?? [];
        row[place] = (row[place] ?? 0) + 1;
      }
    }
    for (const row of counts) expectUniform(row);
  });

  it('finds the right option elsewhere than the group beside does, where both are asked the same', () => {
    const sources = [SUN, choice('R', ['a', 'b', '+c']), choice('S', ['+yes', 'no']), computed('night-of-date')];
    // One night only: all groups have to share it.
    const facts = makeFacts({}, { to: '2026-07-27' });
    for (let seed = 0; seed < 50; seed++) {
      const { sheet } = deal({ sources, facts, seed: `${seed}` });
      const letters = sheet.key.map(({ answers }) => answers.map((answer) => only(lettersOf(answer))));
      for (const [group, row] of letters.slice(1).entries()) {
        expect(row.filter((letter, place) => letter === letters[group]?.[place])).toEqual([]);
      }
    }
  });

  it('gets the same but for the order, whichever option is right, and in whatever order things belong', () => {
    const words = fc.uniqueArray(fc.string({ minLength: 1 }).map(foldText).filter(Boolean), {
      minLength: 3,
      maxLength: 8,
    });
    const write = (options: readonly string[], right: number) => [
      choice(
        'Q',
        options.map((option, place) => (place === right ? `+${option}` : option)),
      ),
      order(
        options.toSorted((one, other) => ((options.indexOf(one) + right) % 3) - ((options.indexOf(other) + right) % 3)),
      ),
      match(options.map((option, place) => [option, options[(place + right) % options.length] ?? ''])),
    ];
    fc.assert(
      fc.property(words, fc.nat(7), fc.nat(7), fc.string(), (drawn, one, other, seed) => {
        // A plus at the start would say which is right.
        const options = drawn.map((option) => `x${option}`);
        const papers = [one, other].map((right) => {
          return deal({ sources: write(options, right % options.length), seed }).sheet.papers.map(forgetOrder);
        });
        expect(papers[1]).toEqual(papers[0]);
      }),
      { numRuns: 50 },
    );
  });

  it('cannot tell the right night by its place among its neighbours', () => {
    const ranks = [0, 0, 0, 0];
    for (let seed = 0; seed < 300; seed++) {
      for (const { question, answer } of pairUp(
        deal({ sources: [computed('night-of-date')], seed: `${seed}` }).sheet,
      )) {
        const rank = optionTexts(question)
          .toSorted()
          .indexOf(readText(only(answersOf(answer))));
        ranks[rank] = (ranks[rank] ?? 0) + 1;
      }
    }
    // Mirror nights lie on either side, so that no rank is empty and none holds half of them.
    expect(Math.min(...ranks)).toBeGreaterThan(60);
    expect(Math.max(...ranks)).toBeLessThan(600);
  });
});
