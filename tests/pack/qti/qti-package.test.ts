import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { renderQtiPackage } from '../../../src/pack/qti/qti-package.ts';
import type { QuizSheet } from '../../../src/quiz/model.ts';
import { listFaults, readDocuments } from './check-package.ts';
import { findAll, findOne, listChildren, requireAttribute } from './read-xml.ts';
import { buildQuiz, choice, EVERY_KIND, line, open, SECRET_WORKING } from './sample-quiz.ts';

const PICTURE = new TextEncoder().encode('a picture');
const SETTING = {
  identifier: 'quiz-0123456789ab',
  labels: createLabels('en'),
  pictures: new Map([['my tide.PNG', PICTURE]]),
};

const pack = (quiz: QuizSheet) => renderQtiPackage(quiz, SETTING);
const documentsOf = (quiz: QuizSheet) => readDocuments(pack(quiz));

/** The item of a question of the first paper. */
function itemOf(questions: Parameters<typeof buildQuiz>[0], number = 1) {
  const item = documentsOf(buildQuiz(questions)).get(`paper-1-question-${number}.xml`);
  if (item === undefined) throw new Error(`There is no question ${number}.`);
  return item;
}

describe('a package', () => {
  it('holds together, whatever kinds of question there are', () => {
    expect(listFaults(pack(buildQuiz(EVERY_KIND)))).toEqual([]);
  });

  it('holds together for 40 groups', () => {
    const groups = Array.from({ length: 40 }, (_, index) => `Group ${index + 1}`);
    const files = pack(buildQuiz(EVERY_KIND, groups));
    expect(listFaults(files)).toEqual([]);
    expect(files.filter(({ path }) => path.includes('-question-'))).toHaveLength(40 * EVERY_KIND.length);
  });

  it('holds together where names of groups are alike, or have no letter of ASCII', () => {
    const files = pack(buildQuiz([open], ['Tōrea', 'Torea', 'بلشون', '<&">']));
    expect(listFaults(files)).toEqual([]);
    expect(files.map(({ path }) => path).filter((path) => !path.includes('question'))).toEqual([
      'imsmanifest.xml',
      'paper-1-torea.xml',
      'paper-2-torea.xml',
      'paper-3.xml',
      'paper-4.xml',
    ]);
  });

  it('comes out the same again', () => {
    expect(pack(buildQuiz(EVERY_KIND))).toEqual(pack(buildQuiz(EVERY_KIND)));
  });

  it('stores a picture once, however many papers show it', () => {
    const pictures = pack(buildQuiz(EVERY_KIND)).filter(({ path }) => path.startsWith('images/'));
    // The author's own, three Moons to match, the empty disc and the drawing; the first Moon is drawn like the last.
    expect(pictures.map(({ path }) => path)).toEqual([
      'images/picture-1.png',
      'images/picture-2.svg',
      'images/picture-3.svg',
      'images/picture-4.svg',
      'images/picture-5.svg',
    ]);
    expect(pictures[0]?.content).toBe(PICTURE);
  });

  it('does not say aloud what only the key says', () => {
    const words = pack(buildQuiz(EVERY_KIND)).map(({ content }) => String(content));
    expect(words.filter((each) => each.includes(SECRET_WORKING))).toEqual([]);
  });

  it('refuses a picture that was not read', () => {
    expect(() => renderQtiPackage(buildQuiz(EVERY_KIND), { ...SETTING, pictures: new Map() })).toThrow(
      'The picture images/my%20tide.PNG of a question was not read.',
    );
  });

  it('refuses a key that is not of its paper', () => {
    const quiz = buildQuiz([open, line(1, ['a'])]);
    const [key, ...others] = quiz.key;
    const turned = {
      ...quiz,
      key: [{ ...quiz.key[0], answers: key?.answers.toReversed() ?? [] }, ...others],
    } as QuizSheet;
    expect(() => pack(turned)).toThrow('Question 2 is answered by lines on the paper, and by line in the key.');
    expect(() => pack({ ...quiz, key: [] })).toThrow('The paper of Heron has no key.');
  });
});

describe('a test', () => {
  const test = documentsOf(buildQuiz(EVERY_KIND, ['Héron & Co'])).get('paper-1-heron-co.xml');
  if (test === undefined) throw new Error('There is no test.');

  it('is a group’s whole paper, handed in at once', () => {
    expect(test.attributes['title']).toBe('Nights & “days” <of> the month · Group Héron & Co');
    expect(findOne(test, 'qti-assessment-section').attributes['title']).toBe('Group Héron & Co');
    expect(findAll(test, 'qti-assessment-item-ref')).toHaveLength(EVERY_KIND.length);
    expect(findOne(test, 'qti-test-part').attributes).toMatchObject({
      'navigation-mode': 'nonlinear',
      'submission-mode': 'simultaneous',
    });
  });

  it('gives the time in seconds, as a guide', () => {
    expect(findOne(test, 'qti-time-limits').attributes).toEqual({ 'max-time': '720', 'allow-late-submission': 'true' });
  });

  it('tells a group nothing of what its answers mean', () => {
    expect(findOne(test, 'qti-item-session-control').attributes).toEqual({
      'max-attempts': '1',
      'show-feedback': 'false',
      'show-solution': 'false',
    });
  });

  it('begins with what the author tells the group', () => {
    const block = findOne(test, 'qti-rubric-block');
    expect(block.attributes).toMatchObject({ use: 'instructions', view: 'candidate' });
    expect(block.text).toBe('Work together.');
  });

  it('adds up marks that can be reached to those of the paper', () => {
    const quiz = buildQuiz(EVERY_KIND, ['Heron']);
    const items = [...documentsOf(quiz).values()].filter(({ name }) => name === 'qti-assessment-item');
    const marks = items.map((item) => {
      const outcome = findAll(item, 'qti-outcome-declaration').find(
        (each) => each.attributes['identifier'] === 'MAXSCORE',
      );
      return Number(outcome?.text);
    });
    expect(marks.reduce((sum, each) => sum + each, 0)).toBe(quiz.papers[0]?.totalMarks);
    expect(findAll(test, 'qti-test-variables').map((each) => each.attributes['variable-identifier'])).toEqual([
      'SCORE',
      'MAXSCORE',
    ]);
  });
});

describe('an item', () => {
  it('says its language, and that of every name', () => {
    const item = itemOf(EVERY_KIND, 9);
    expect(item.attributes['xml:lang']).toBe('en');
    expect(findAll(item, 'span').map(({ attributes, text }) => [text, attributes])).toEqual([
      ['Hidden Moon', { 'xml:lang': 'mi', lang: 'mi' }],
      ['Half Shell', { 'xml:lang': 'mi', lang: 'mi' }],
      ['ليلة القمر', { 'xml:lang': 'ar', lang: 'ar', dir: 'rtl' }],
    ]);
  });

  it('says in words what its pictures show', () => {
    expect(findAll(itemOf(EVERY_KIND, 9), 'img').map(({ attributes }) => attributes)).toEqual([
      { src: 'images/picture-2.svg', alt: 'Lit at the right.', width: '80', height: '80' },
      { src: 'images/picture-3.svg', alt: 'Whole.', width: '80', height: '80' },
      { src: 'images/picture-4.svg', alt: 'Dark.', width: '80', height: '80' },
    ]);
  });

  it('shows things to choose in the order of the paper, and leaves them there', () => {
    const item = itemOf(EVERY_KIND, 7);
    expect(findAll(item, 'qti-simple-choice').map(({ text }) => text)).toEqual(['third', 'first', 'second']);
    expect(findOne(item, 'qti-order-interaction').attributes['shuffle']).toBe('false');
    expect(findAll(findOne(item, 'qti-correct-response'), 'qti-value').map(({ text }) => text)).toEqual([
      'choice-2',
      'choice-3',
      'choice-1',
    ]);
  });

  it('lets one option be ticked, or as many as one likes', () => {
    expect(findOne(itemOf([choice(1, false, ['*a', 'b'])]), 'qti-choice-interaction').attributes['max-choices']).toBe(
      '1',
    );
    const several = itemOf([choice(2, true, ['*a', '*b', 'c'])]);
    expect(findOne(several, 'qti-choice-interaction').attributes['max-choices']).toBe('0');
    expect(findOne(several, 'qti-prompt').text).toBe('Which?Tick every right one.');
  });

  it('has the unit after its line', () => {
    expect(findAll(findOne(itemOf(EVERY_KIND, 5), 'qti-item-body'), 'p').at(-1)?.text).toBe(' nights & days');
  });

  it('lets no one see how long an answer is', () => {
    expect(
      findOne(itemOf([line(1, ['Moon'])]), 'qti-text-entry-interaction').attributes['expected-length'],
    ).toBeUndefined();
  });

  it('shows a rubric to those who mark alone', () => {
    const item = itemOf([open]);
    const block = findOne(item, 'qti-rubric-block');
    expect(block.attributes).toMatchObject({ use: 'scoring', view: 'scorer' });
    expect(findAll(block, 'p').map(({ text }) => text)).toEqual([
      '2 marks: says that the Sun & the Moon stand together',
      '1 mark: names the Sun',
    ]);
    expect(findAll(item, 'qti-response-processing')).toEqual([]);
    const [score] = findAll(item, 'qti-outcome-declaration');
    expect(score?.attributes['external-scored']).toBe('human');
  });

  it('asks for a drawing with an empty disc, and keeps the right one for those who mark', () => {
    const item = itemOf(EVERY_KIND, 12);
    const alts = findAll(findOne(item, 'qti-prompt'), 'img').map((img) => requireAttribute(img, 'alt'));
    expect(alts).toEqual(['An empty circle.']);
    expect(findOne(findOne(item, 'qti-rubric-block'), 'img').attributes['alt']).toBe('Lit at the left.');
  });

  it('says what a wrong option means, under the option’s own name', () => {
    const texts = findAll(itemOf(EVERY_KIND, 1), 'qti-modal-feedback').map(({ attributes, text }) => [
      attributes['identifier'],
      text,
    ]);
    expect(texts).toEqual([['choice-2', 'Mixed up “shore” & sea.']]);
  });

  it('names no option after what is right', () => {
    const shapeOf = (written: readonly string[]) => {
      const item = itemOf([choice(1, false, written)]);
      const interaction = findOne(item, 'qti-choice-interaction');
      return [interaction.attributes, ...listChildren(interaction).map(({ attributes }) => attributes)];
    };
    expect(shapeOf(['*a', 'b', 'c'])).toEqual(shapeOf(['a', 'b', '*c']));
  });
});
