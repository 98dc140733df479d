import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { renderQtiPackage } from '../../../src/pack/qti/qti-package.ts';
import { type Answer, markItem, scoreOf } from './mark-item.ts';
import { findAll, findOne, readXml } from './read-xml.ts';
import { buildQuiz, choice, line, match, order, type SampleQuestion, text } from './sample-quiz.ts';

/** The item of a single question. */
function itemOf(question: SampleQuestion) {
  const setting = { identifier: 'quiz-0123456789ab', labels: createLabels('en'), pictures: new Map() };
  const files = renderQtiPackage(buildQuiz([question], ['Heron']), setting);
  return readXml(files.find(({ path }) => path.includes('-question-'))?.content ?? '');
}

const rightAnswer = (item: ReturnType<typeof itemOf>): Answer =>
  findAll(findOne(item, 'qti-correct-response'), 'qti-value').map((value) => value.text);

/** The rule of the key for what is partly right: half marks may come of it, smaller parts are dropped. */
const share = (marks: number, points: number, most: number) => Math.floor((2 * marks * points) / most) / 2;

/** Every choice from a list, the empty one among them. */
function listSubsets(values: readonly string[]): string[][] {
  const [first, ...others] = values;
  if (first === undefined) return [[]];
  return listSubsets(others).flatMap((set) => [set, [first, ...set]]);
}

function listOrders(values: readonly string[]): string[][] {
  if (values.length === 0) return [[]];
  return values.flatMap((first) =>
    listOrders(values.filter((value) => value !== first)).map((rest) => [first, ...rest]),
  );
}

const names = (count: number) => Array.from({ length: count }, (_, index) => `choice-${index + 1}`);

describe('one right option', () => {
  it.each([1, 3])('earns all of %i marks, and any other none', (marks) => {
    const item = itemOf(choice(marks, false, ['a', '*b', 'c']));
    expect([[], ...names(3).map((each) => [each])].map((answer) => scoreOf(item, answer))).toEqual([0, 0, marks, 0]);
  });
});

describe('several right options', () => {
  // The rule of the key, worked out here from the options and not from the item: a mark a right tick less one a wrong
  // one, not under none, shared out.
  it.each([
    [2, ['*a', 'b', '*c', 'd']],
    [3, ['*a', '*b', 'c']],
    [1, ['*a', '*b', '*c', '*d', 'e']],
    [4, ['a', '*b', 'c', 'd']],
    [1, ['*a', '*b', 'c']],
    [2, ['*a', '*b', '*c']],
    [5, ['*a', '*b', 'c', '*d', '*e', '*f', '*g', '*h']],
  ])('share %i marks by the ticks of %j', (marks, options) => {
    const item = itemOf(choice(marks, true, options));
    const right = options.map((option) => option.startsWith('*'));
    const count = right.filter(Boolean).length;
    for (const ticks of listSubsets(names(options.length))) {
      const points = ticks.map((tick): number => (right[names(options.length).indexOf(tick)] ? 1 : -1));
      const sum = points.reduce((total, point) => total + point, 0);
      expect(scoreOf(item, ticks)).toBe(share(marks, Math.max(0, sum), count));
    }
    expect(scoreOf(item, rightAnswer(item))).toBe(marks);
  });
});

describe('a line', () => {
  const accepts = (question: SampleQuestion, answers: readonly string[]) => {
    const item = itemOf(question);
    return answers.filter((answer) => scoreOf(item, [answer]) === question.marks);
  };
  const refuses = (question: SampleQuestion, answers: readonly string[]) => {
    const item = itemOf(question);
    return answers.filter((answer) => scoreOf(item, [answer]) === 0);
  };

  it('takes every accepted spelling, and nothing else', () => {
    const question = line(2, ['Hidden Moon', 'Whiro']);
    expect(accepts(question, ['Hidden Moon', 'Whiro'])).toHaveLength(2);
    expect(refuses(question, ['Hidden', 'Moon', 'Whiro moon', ''])).toHaveLength(4);
    expect(scoreOf(itemOf(question), [])).toBe(0);
  });

  const spellings = ['Tāne Ā', 'tāne ā', 'Tane A', 'Tāne A', 'TANE A'];
  it.each([
    [{ case: true, accents: true }, spellings],
    [{ case: true, accents: false }, ['Tāne Ā', 'tāne ā']],
    [{ case: false, accents: true }, ['Tāne Ā', 'Tane A', 'Tāne A']],
    [{ case: false, accents: false }, ['Tāne Ā']],
  ])('overlooks what the key says it overlooks: %o', (forgive, taken) => {
    const question = line(1, ['Tāne Ā'], forgive);
    expect(accepts(question, spellings)).toEqual(taken);
    expect(refuses(question, spellings)).toHaveLength(spellings.length - taken.length);
  });

  it('takes a number with or without its unit', () => {
    const question = line(1, ['3'], { case: true, accents: true }, 'nights');
    expect(accepts(question, ['3', '3 nights', '3 Nights'])).toHaveLength(3);
    expect(refuses(question, ['4', '4 nights', 'nights', '33'])).toHaveLength(4);
  });

  it('takes a unit that the answer holds already once', () => {
    const question = line(1, ['40\u00a0secondes', '40 s'], { case: true, accents: true }, 'secondes');
    expect(accepts(question, ['40', '40 secondes', '40 s', '40 s secondes'])).toHaveLength(4);
    expect(refuses(question, ['40 secondes secondes', 'secondes'])).toHaveLength(2);
  });

  it('shows the spelling of the key as the right one', () => {
    expect(rightAnswer(itemOf(line(1, [' Half  Shell ', 'Demi'])))).toEqual(['Half Shell']);
  });

  it('recognises a slip, which earns nothing', () => {
    const item = itemOf(line(1, ['3'], { case: true, accents: true }, 'nights'));
    for (const answer of ['99', '99 nights']) {
      expect(markItem(item, [answer]).get('FEEDBACK')).toEqual(['slip-1']);
      expect(scoreOf(item, [answer])).toBe(0);
    }
    expect(markItem(item, ['3']).get('FEEDBACK')).toEqual([]);
    const timed = line(1, ['3'], { case: true, accents: true }, 'secondes');
    const slips = [{ answer: '32\u00a0secondes', means: text('Counted all.') }];
    const slow = itemOf({ ...timed, expected: { ...timed.expected, slips } as SampleQuestion['expected'] });
    for (const answer of ['32', '32 secondes']) expect(markItem(slow, [answer]).get('FEEDBACK')).toEqual(['slip-1']);
  });
});

describe('an order', () => {
  const right = ['first', 'second', 'third', 'fourth'];
  const shown = [2, 0, 3, 1];
  /** How many places of an answer are right, by what the learner reads. */
  const countPlaces = (answer: Answer) =>
    answer.filter((each, place) => shown[names(4).indexOf(each)] === place).length;

  it.each([1, 2, 3, 4, 5, 8])('shares %i marks by its right places, but one mark is all or nothing', (marks) => {
    const item = itemOf(order(marks, right, shown));
    for (const answer of listOrders(names(4))) {
      const places = countPlaces(answer);
      expect(scoreOf(item, answer)).toBe(marks === 1 ? Math.floor(places / 4) : share(marks, places, 4));
    }
    expect(scoreOf(item, rightAnswer(item))).toBe(marks);
    expect(scoreOf(item, [])).toBe(0);
    expect(scoreOf(item, rightAnswer(item).slice(0, 2))).toBe(marks === 1 ? 0 : share(marks, 2, 4));
  });
});

describe('a match', () => {
  const pairs = ['a', 'b', 'c'].map((each, index) => [text(each), text(String(index))] as const);
  const shown = [1, 2, 0];

  it.each([1, 2, 3, 5, 6])('shares %i marks by its right pairs', (marks) => {
    const item = itemOf(match(marks, pairs, shown));
    for (const rights of listOrders(['right-1', 'right-2', 'right-3'])) {
      const answer = rights.map((name, index) => `left-${index + 1} ${name}`);
      const count = rights.filter((name, index) => shown[Number(name.slice(-1)) - 1] === index).length;
      expect(scoreOf(item, answer)).toBe(share(marks, count, 3));
    }
    expect(scoreOf(item, rightAnswer(item))).toBe(marks);
    expect(scoreOf(item, [])).toBe(0);
  });
});

describe('feedback', () => {
  it('is what the chosen wrong options mean', () => {
    const item = itemOf(choice(2, true, ['*a', 'b|Counted tonight as well.', 'c']));
    const shown = new Set(findAll(item, 'qti-modal-feedback').map(({ attributes }) => attributes['identifier']));
    const chosen = markItem(item, ['choice-1', 'choice-2', 'choice-3']).get('FEEDBACK') ?? [];
    expect(chosen.filter((each) => shown.has(String(each)))).toEqual(['choice-2']);
  });
});
