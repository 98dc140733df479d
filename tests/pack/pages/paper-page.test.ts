import { describe, expect, it } from 'vitest';
import { renderPaperPage } from '../../../src/pack/pages/paper-page.ts';
import type { AnswerSpace, LearnerPaper } from '../../../src/quiz/model.ts';
import { buildFakeQuiz, buildFakeWeek } from '../fake-week.ts';
import { buildFrame, findAll, readText } from '../render-pages.ts';

const FRAME = buildFrame(buildFakeWeek());
const { papers, key } = buildFakeQuiz(1, ['Heron', 'Kelp', 'Oyster']);

const text = (value: string) => [{ type: 'text' as const, value }];
const lettered = (...words: readonly string[]) =>
  words.map((word, place) => ({ letter: String.fromCharCode(65 + place), content: text(word) }));

const SPACES: readonly { form: string; space: AnswerSpace; words: string }[] = [
  {
    form: 'an order',
    space: { kind: 'order', items: lettered('High', 'Low') },
    words: ' Write the letters in order.1 markA HighB Lowfirst Letter: Letter:  last',
  },
  {
    form: 'pairs',
    space: { kind: 'match', headings: [text('Night'), text('Group')], left: [text('Ebb')], right: lettered('Mud') },
    words: ' Write one letter in each box.1 markNight1. EbbLetter: GroupA Mud',
  },
  {
    form: 'pairs without headings',
    space: { kind: 'match', headings: undefined, left: [text('Ebb')], right: lettered('Mud') },
    words: ' Write one letter in each box.1 mark1. EbbLetter: A Mud',
  },
  { form: 'an open answer', space: { kind: 'lines', lines: 3 }, words: '1 markWrite here:' },
  {
    form: 'a drawing',
    space: { kind: 'disc' },
    words: ' Shade the dark part. Leave the lit part white.1 mark↑ up',
  },
];

describe('renderPaperPage', () => {
  it('gives each group a paper with its name, the date, the time and the marks', () => {
    const heads = findAll(renderPaperPage(papers, 1, FRAME), '.paper-head').map(readText);
    expect(heads).toEqual(
      ['Heron', 'Kelp', 'Oyster'].map(
        (group) => `Group ${group}Quiz 1Monday 27 July · 12 minutes · 3 questions · 4 marks`,
      ),
    );
  });

  it('leaves the time out where the quiz has none', () => {
    const untimed = papers.map(({ minutes: _, ...paper }): LearnerPaper => paper);
    expect(findAll(renderPaperPage(untimed, 1, FRAME), '.paper-facts').map(readText)[0]).toBe(
      'Monday 27 July · 3 questions · 4 marks',
    );
  });

  it('has a line for each of the four roles, which move on by a seat from quiz to quiz', () => {
    const readRoles = (quizOfWeek: number) =>
      findAll(renderPaperPage(papers, quizOfWeek, FRAME), '.roles').map(readText)[0];
    expect(readRoles(1)).toBe('Seat 1 Reader Seat 2 Writer Seat 3 Checker Seat 4 Drummer ');
    expect(readRoles(2)).toBe('Seat 1 Writer Seat 2 Checker Seat 3 Drummer Seat 4 Reader ');
    expect(readRoles(5)).toBe(readRoles(1));
  });

  it('gives lettered boxes to tick, or a line with its unit', () => {
    const [first, second, third] = findAll(renderPaperPage(papers, 1, FRAME), '.question').map(readText);
    expect(first).toBe('Where does the light come from? Tick one.1 markA the SunB the sea');
    expect(second).toBe('How many nights?2 marksWrite here: nights');
    expect(third).toBe('Which night?1 markWrite here:');
  });

  it.each(SPACES)('gives room for $form', ({ space, words }) => {
    const [paper] = papers;
    const [question] = paper?.questions ?? [];
    if (paper === undefined || question === undefined) throw new Error('The fake quiz has changed.');
    const page = renderPaperPage([{ ...paper, questions: [{ ...question, space }] }], 1, FRAME);
    expect(findAll(page, '.question').map(readText)).toEqual([`Where does the light come from?${words}`]);
  });

  it('says when several boxes are to be ticked', () => {
    const [paper] = papers;
    const [question] = paper?.questions ?? [];
    if (paper === undefined || question?.space.kind !== 'options') throw new Error('The fake quiz has changed.');
    const several = { ...question, space: { ...question.space, several: true } };
    const page = renderPaperPage([{ ...paper, questions: [several] }], 1, FRAME);
    expect(readText(page)).toContain('Tick every right one.');
  });

  it('keeps the number that a question has', () => {
    const shifted = papers.map((paper) => ({ ...paper, questions: paper.questions.slice(1) }));
    const items = findAll(renderPaperPage(shifted, 1, FRAME), 'li').map(({ properties }) => properties['value']);
    expect(items.filter((value) => value !== undefined)).toEqual([2, 3, 2, 3, 2, 3]);
  });

  it('says what the empty circle is to those who hear it', () => {
    const [paper] = papers;
    const [question] = paper?.questions ?? [];
    if (paper === undefined || question === undefined) throw new Error('The fake quiz has changed.');
    const page = renderPaperPage([{ ...paper, questions: [{ ...question, space: { kind: 'disc' } }] }], 1, FRAME);
    const [disc] = findAll(page, 'svg');
    expect(disc?.properties['role']).toBe('img');
    expect(disc?.properties['ariaLabel']).toMatch(/^An empty circle/);
  });

  it('is set smaller, as all papers of the quiz, when one would not stand on one sheet', () => {
    const [paper] = papers;
    const question = paper?.questions[0];
    if (paper === undefined || question?.space.kind !== 'options') throw new Error('The fake quiz has changed.');
    const longOptions = question.space.options.map((option) => ({
      ...option,
      content: [{ type: 'text' as const, value: 'an option of some length, which takes two lines' }],
    }));
    const render = (count: number, options = question.space.kind === 'options' ? question.space.options : []) => {
      const space = { kind: 'options', several: false, options } as const;
      const questions = Array.from({ length: count }, (_, index) => ({ ...question, space, number: index + 1 }));
      return renderPaperPage([{ ...paper, questions }], 1, FRAME);
    };
    expect(findAll(render(9), '.dense')).toHaveLength(0);
    expect(findAll(render(12), '.dense')).toHaveLength(1);
    expect(findAll(render(9, longOptions), '.dense')).toHaveLength(1);
  });

  it('takes learners’ papers alone', () => {
    // @ts-expect-error: a key is no learners' paper.
    expect(() => renderPaperPage(key, 1, FRAME)).toThrow();
    expect(() => renderPaperPage([], 1, FRAME)).toThrow('without papers');
  });
});
