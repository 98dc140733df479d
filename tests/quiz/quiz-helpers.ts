import type { ElementContent } from 'hast';
import type { Diagnostic } from '../../src/content/diagnostic.ts';
import { createLabels } from '../../src/content/labels.ts';
import type { School } from '../../src/content/types.ts';
import { type DealRequest, dealPapers } from '../../src/quiz/deal-papers.ts';
import type { Hardness } from '../../src/quiz/even-band.ts';
import { readText } from '../../src/quiz/fold-text.ts';
import type {
  ComputedSource,
  KeyAnswer,
  LearnerQuestion,
  QuestionSource,
  QuizFacts,
  QuizSheet,
} from '../../src/quiz/model.ts';
import type { Level, QuestionInstance } from '../../src/quiz/questions/question-instance.ts';
import type { ComputedKind } from '../../src/quiz/questions/question-kinds.ts';
import { type FakeSky, fakeSky } from './fake-almanac.ts';

export const WEEK = { today: '2026-07-27', from: '2026-07-27', to: '2026-07-31' };

export function makeFacts(sky: FakeSky = {}, dates: Partial<typeof WEEK> = {}): QuizFacts {
  const { almanac, calendar } = fakeSky(sky);
  const school: School = {
    id: 'fake',
    name: 'Fake School',
    language: 'en',
    place: almanac.place,
    calendar: calendar.id,
    gestures: 'fake',
    classBegins: '09:00',
    classEnds: '15:00',
    bedtime: '20:30',
    terms: [],
    groups: [],
    home: false,
  };
  const gestures = { id: 'fake', title: 'Fake gestures', gestures: {}, recordings: {} };
  return { almanac, calendar, gestures, school, labels: createLabels('en'), toldDates: new Set(), ...WEEK, ...dates };
}

const USUAL_FACTS = makeFacts();

let line = 0;
const nextPlace = () => {
  line += 1;
  return { file: 'lesson.md', line, column: 1 };
};

export function text(value: string): ElementContent[] {
  return [{ type: 'text', value }];
}

/** Options that begin with "+" are right. */
export function choice(
  prompt: string,
  options: readonly string[],
  more: { marks?: number; working?: string } = {},
): QuestionSource {
  return {
    kind: 'choice',
    place: nextPlace(),
    prompt: text(prompt),
    options: options.map((option) => ({ content: text(option.replace(/^\+/, '')), right: option.startsWith('+') })),
    ...more,
  };
}

export function short(
  prompt: string,
  answers: readonly string[],
  more: { marks?: number; working?: string } = {},
): QuestionSource {
  const forgive = { case: true, accents: true };
  return { kind: 'short', place: nextPlace(), prompt: text(prompt), answers, forgive, ...more };
}

export function computed(ask: ComputedKind, more: Partial<ComputedSource> = {}): ComputedSource {
  return { kind: 'computed', place: nextPlace(), ask, ...more };
}

/** An instance of no kind, for what only looks at what instances ask and how hard they are. */
export function makeInstance(
  asks: string,
  level: Level = 1,
  hardness: Hardness = { nights: 0, hurdle: false },
): QuestionInstance {
  return {
    kind: 'order',
    asks,
    tells: [],
    level,
    hardness,
    about: { nights: [], dates: [] },
    renderPrompt: () => [],
    renderWorking: () => [],
    renderItems: () => [],
  };
}

export function deal(request: Partial<DealRequest> & Pick<DealRequest, 'sources'>): {
  sheet: QuizSheet;
  diagnostics: Diagnostic[];
} {
  const diagnostics: Diagnostic[] = [];
  const sheet = dealPapers({
    title: 'Which night?',
    number: 1,
    groups: ['Heron', 'Oyster', 'Kelp', 'Driftwood'],
    seed: 'round-moon/wednesday/1',
    facts: USUAL_FACTS,
    report: (diagnostic) => diagnostics.push(diagnostic),
    ...request,
  });
  return { sheet, diagnostics };
}

/** Letters of the right options; none for an answer without options. */
export function lettersOf({ expected }: KeyAnswer): string[] {
  return expected.kind === 'options' ? expected.options.filter(({ right }) => right).map(({ letter }) => letter) : [];
}

/** The right options, or the accepted spellings. */
export function answersOf({ expected }: KeyAnswer): (readonly ElementContent[])[] {
  if (expected.kind === 'options') return expected.options.filter(({ right }) => right).map(({ content }) => content);
  if (expected.kind === 'line') return [...expected.accepted];
  throw new Error('This answer has neither options nor spellings.');
}

export function optionTexts({ space }: LearnerQuestion): string[] {
  if (space.kind !== 'options') throw new Error('This question has no options.');
  return space.options.map(({ content }) => readText(content));
}

/** Each question of each paper with its answer. */
export function pairUp(sheet: QuizSheet): { group: number; question: LearnerQuestion; answer: KeyAnswer }[] {
  return sheet.papers.flatMap((paper, group) =>
    paper.questions.map((question, place) => {
      const answer = sheet.key[group]?.answers[place];
      if (answer === undefined) throw new Error('A question has no answer.');
      return { group, question, answer };
    }),
  );
}

/** The one item of a list. */
export function only<Item>(items: readonly Item[]): Item {
  const [item] = items;
  if (item === undefined || items.length !== 1) throw new Error(`Expected one item, found ${items.length}.`);
  return item;
}

/** Texts of the tagged names of a tree, in order. */
export function taggedNames(content: readonly ElementContent[], language: string): string[] {
  return content.flatMap((node) => {
    if (node.type !== 'element') return [];
    return node.properties['lang'] === language ? [readText(node.children)] : taggedNames(node.children, language);
  });
}
