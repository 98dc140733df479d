import fc from 'fast-check';
import { expect, it } from 'vitest';
import { resolveWeek } from '../../../src/lesson/resolve-week.ts';
import { collectSecrets } from '../../../src/pack/leaks/collect-secrets.ts';
import { QUESTION_KINDS } from '../../../src/quiz/questions/question-kinds.ts';
import { makeWeek, openContent, writeLesson } from '../../directives/build-week.ts';
import { openLeakWeek, plant } from './leak-week.ts';

/*
 * Quizzes put together at random, of written questions with short and usual words as answers and of computed ones,
 * beside handouts that teach the very names. What the kit makes of them has no leak, whatever the order and the dates;
 * and a sentence of the key that is put anywhere is found.
 */

const setting = openContent();

const WRITTEN: readonly string[] = [
  'What lights the Moon?\n\n   ::answer[the Sun]{accept="Sun; sunlight" working="The Sun lights one half of it."}',
  'Which hand leads?\n\n   ::answer[left]{forgive=nothing}',
  'How many nights has High Water?\n\n   ::answer[3]{hint="Count on your fingers."}',
  'Which night follows Round Moon?\n\n   ::answer[Butter Moon]',
  'Which group begins with Round Moon?\n\n   ::answer[High Water]{accept="the High Water group"}',
  'Which is true?\n   - [x] It is round.\n     \n   - [ ] It is a *lamp*.\n     > They remember a story of a lamp.\n   - [ ] It is Round Moon.',
  'Which are true?\n   - [x] The Moon is rock.\n   - [x] The Moon is round.\n   - [ ] The Moon is 3.',
  'Order!\n   1. Hidden Moon\n   2. Half Shell\n   3. Round Moon',
  'Match!\n\n   | Night | Group |\n   | --- | --- |\n   | Hidden Moon | Dark Water |\n   | Half Shell | Open Channel |\n   | Round Moon | High Water |',
  'Why?\n\n   ::answer{rubric="2: says that the Sun lights it; 1: says the Sun" lines=3}',
  'Draw Wednesday.\n\n   ::answer{draw=wednesday}',
];
const COMPUTED = Object.keys(QUESTION_KINDS).map((kind) => `::question{ask=${kind}}`);
const HANDOUTS: readonly string[] = [
  'High Water holds Round Moon, Butter Moon and Short Wait. Turn left 3 times.',
  '::gesture-sequence{nights="High Water" tempo=72}',
  ':sentence{} The Sun lights one half of it, they say.',
  '::score',
  '::tonight',
  '| Night | Group |\n| --- | --- |\n| Round Moon | High Water |',
];

const lessons = fc
  .record({
    written: fc.shuffledSubarray([...WRITTEN], { minLength: 1, maxLength: 6 }),
    computed: fc.shuffledSubarray(COMPUTED, { maxLength: 5 }),
    handouts: fc.shuffledSubarray([...HANDOUTS], { maxLength: 3 }),
    groups: fc.integer({ min: 1, max: 5 }),
    seed: fc.nat(),
    weeksLater: fc.nat(40),
  })
  .map(({ written, computed, handouts, groups, seed, weeksLater }) => {
    const questions = written.map((question, index) => `${index + 1}. ${question}`).join('\n\n');
    const quiz = `:::group-quiz[High Water, and left]{groups=${groups} seed="${seed}"}\n${questions}\n\n${computed.join('\n\n')}\n:::`;
    const sheets = handouts.map((text, index) => `:::handout[Sheet ${index}]\n${text}\n:::`);
    const monday = new Date(Date.UTC(2026, 6, 27 + 7 * weeksLater)).toISOString().slice(0, 10);
    const week = `title: A test week\nbegins: ${monday}\ndays: [wednesday]\nschool: saltgrass-point\nfor: Years 3-4\n`;
    return makeWeek({ 'input.md': writeLesson([quiz, ...sheets].join('\n\n')) }, { week });
  })
  // Some dates have no answer to some questions, and some lessons too few questions for their groups.
  .filter((files) => resolveWeek(files, setting).week !== undefined);

it('random quizzes have no leak', () => {
  fc.assert(
    fc.property(lessons, (files) => {
      const opened = openLeakWeek(files, setting);
      expect(opened.find()).toEqual([]);
      expect(opened.find(opened.files, 'built')).toEqual([]);
    }),
    { numRuns: 30 },
  );
});

it('a sentence of their key is found wherever it is put', () => {
  fc.assert(
    fc.property(lessons, fc.nat(), fc.nat(), (files, which, where) => {
      const opened = openLeakWeek(files, setting);
      const sentences = collectSecrets(opened.week).filter(({ telling }) => telling === 'anywhere');
      const text = sentences[which % Math.max(sentences.length, 1)]?.text;
      const page = opened.files[where % opened.files.length];
      if (text === undefined || page === undefined) return;
      for (const planted of [`<p>${text}</p>`, `<p title="So: ${text}"></p>`, `<!--${text}-->`]) {
        const found = opened.find(plant(opened.files, page.path, '</main>', `${planted}</main>`));
        expect(found.length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 12 },
  );
});
