import { createAlmanac } from '../../src/calendar/almanac.ts';
import { addDays, computeMonday } from '../../src/content/civil-date.ts';
import { createLabels } from '../../src/content/labels.ts';
import { openLibrary } from '../../src/content/open-library.ts';
import { readContent } from '../../src/node/read-content.ts';
import { dealPapers } from '../../src/quiz/deal-papers.ts';
import type { QuestionSource, QuizFacts, QuizSheet, WrittenSource } from '../../src/quiz/model.ts';
import { type ComputedKind, QUESTION_KINDS } from '../../src/quiz/questions/question-kinds.ts';

// A quiz with every kind of question. `deal`: its papers and keys for a number of groups, from a calendar nothing was
// asked of yet; prints the milliseconds of the processor. `many`: quiz after quiz, each on its own date, up to a number
// of papers; prints the bytes in use after a tenth of them and after all.
const [contentFolder = 'content', schoolId = '', date = '', mode = 'deal', count = '4'] = process.argv.slice(2);
const opened = openLibrary(readContent(contentFolder)).openSchool(schoolId)?.value;
if (opened === undefined) throw new Error(`There is no school ${schoolId}.`);
const { calendar, gestures, school } = opened;
const almanac = createAlmanac(calendar, school.place);
const labels = createLabels('en');
const place = { file: 'bench.md', line: 1, column: 1 };
const text = (value: string) => [{ type: 'text' as const, value }];
const common = { place, prompt: text('What is asked here?') };

const WRITTEN: readonly WrittenSource[] = [
  {
    ...common,
    kind: 'choice',
    options: ['one', 'two', 'three', 'four'].map((word, index) => ({ content: text(word), right: index === 2 })),
  },
  { ...common, kind: 'short', answers: ['one', 'uno'], forgive: { case: true, accents: true } },
  { ...common, kind: 'order', items: ['one', 'two', 'three', 'four'].map(text) },
  {
    ...common,
    kind: 'match',
    headings: [text('Left'), text('Right')],
    pairs: ['one', 'two', 'three'].map((word) => ({ left: text(word), right: text(word.toUpperCase()) })),
  },
  { ...common, kind: 'open', lines: 3, rubric: [{ marks: 1, words: 'says why' }] },
];

// The registry's keys are the kinds.
const COMPUTED = (Object.keys(QUESTION_KINDS) as ComputedKind[]).map((ask): QuestionSource => {
  return { kind: 'computed', place, ask };
});

function makeFacts(today: string): QuizFacts {
  const dates = { today, from: computeMonday(today), to: addDays(today, 7) };
  return { almanac, calendar, gestures, school, labels, toldDates: new Set(), ...dates };
}

function deal(today: string, groups: number): QuizSheet {
  return dealPapers({
    title: 'Quiz',
    number: 1,
    sources: [...WRITTEN, ...COMPUTED],
    groups: Array.from({ length: groups }, (_, group) => `Group ${group + 1}`),
    seed: `bench/${today}`,
    facts: makeFacts(today),
    report: () => undefined,
  });
}

function timeDeal(groups: number): number {
  const began = process.cpuUsage();
  const { papers, key } = deal(date, groups);
  const { user, system } = process.cpuUsage(began);
  const asked = WRITTEN.length + COMPUTED.length;
  if (papers.length !== groups || papers.some(({ questions }) => questions.length !== asked)) {
    throw new Error(`Not every question can be asked on ${date}.`);
  }
  if (key.some(({ answers }) => answers.length !== asked)) throw new Error('A question has no answer.');
  return (user + system) / 1000;
}

const GROUPS_OF_MANY = 20;

/** The calendar's memory is bounded, but it has to be full before it can be seen not to grow: so dates come again. */
const DATES_OF_MANY = 40;

function weighMany(papers: number): number[] {
  const quizzes = papers / GROUPS_OF_MANY;
  const bytes: number[] = [];
  for (let quiz = 1; quiz <= quizzes; quiz++) {
    const { papers: dealt } = deal(addDays(date, quiz % DATES_OF_MANY), GROUPS_OF_MANY);
    if (dealt.length !== GROUPS_OF_MANY) throw new Error('A group has no paper.');
    if (quiz !== quizzes / 10 && quiz !== quizzes) continue;
    globalThis.gc?.();
    bytes.push(process.memoryUsage().heapUsed);
  }
  return bytes;
}

process.stdout.write(JSON.stringify(mode === 'many' ? weighMany(Number(count)) : timeDeal(Number(count))));
