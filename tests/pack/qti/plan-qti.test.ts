import { s } from 'hastscript';
import { describe, expect, it } from 'vitest';
import type { GestureSet } from '../../../src/content/types.ts';
import type { ResolvedLesson } from '../../../src/lesson/model.ts';
import { sha256 } from '../../../src/node/sha256.ts';
import { zip } from '../../../src/node/zip.ts';
import { planQtiPackages } from '../../../src/pack/qti/plan-qti.ts';
import { buildFakeWeek, type FakeWeekOptions } from '../fake-week.ts';
import { listFaults, readDocuments } from './check-package.ts';
import { readZip } from './read-zip.ts';
import { buildQuiz, EVERY_KIND, open } from './sample-quiz.ts';

const TIDE = new Uint8Array([1, 2, 3]);
const PICTURES = new Map([['pictures/tide.png', TIDE]]);

/** A lesson that shows the picture of the sample questions, with quizzes of them. */
function lesson(day: 'monday' | 'wednesday', count: number): NonNullable<FakeWeekOptions['lessons']> {
  const quizzes = Array.from({ length: count }, (_, index) => ({ ...buildQuiz(EVERY_KIND), number: index + 1 }));
  const pictures: ResolvedLesson['pictures'] = [{ path: 'pictures/tide.png', name: 'my tide.PNG', forLearners: true }];
  return [{ head: { day }, quizzes, pictures }];
}

function plan(options: FakeWeekOptions) {
  return planQtiPackages(buildFakeWeek(options), PICTURES, { sha256, zip });
}

/** What is in an archive. */
function unzip(content: string | Uint8Array | undefined) {
  if (content === undefined || typeof content === 'string') throw new Error('There is no archive.');
  return readZip(content).map(({ path, bytes }) => ({ path, content: bytes }));
}

function readIdentifier(options: FakeWeekOptions): string | undefined {
  return readDocuments(unzip(plan(options)[0]?.content)).get('imsmanifest.xml')?.attributes['identifier'];
}

describe('the quizzes of a week', () => {
  it('are an archive each, in the teacher’s part', () => {
    const files = plan({ lessons: [...lesson('monday', 2), ...lesson('wednesday', 1)] });
    expect(files.map(({ path }) => path)).toEqual([
      'qti/1-monday-quiz-1.zip',
      'qti/1-monday-quiz-2.zip',
      'qti/3-wednesday-quiz-1.zip',
    ]);
    for (const { content } of files) expect(listFaults(unzip(content))).toEqual([]);
  });

  it('bring the pictures of their lesson along', () => {
    const [file] = plan({ lessons: lesson('monday', 1) });
    expect(unzip(file?.content).find(({ path }) => path === 'images/picture-1.png')?.content).toEqual(TIDE);
  });

  it('bring the pictures that stand for gestures along', () => {
    const picture = { file: 'wave.jpg', packName: 'picture-7.jpg', widthPx: 1, heightPx: 1, bytes: TIDE };
    const gestures: Partial<GestureSet> = { gestures: { wave: { move: 'hold', cue: '', seated: '', picture } } };
    const prompt = [s('svg', { ariaLabel: 'Wave.' }, [s('image', { href: 'images/picture-7.jpg' })])];
    const quiz = buildQuiz([{ ...open, prompt }]);
    const [file] = plan({ gestures, lessons: [{ quizzes: [quiz] }] });
    expect(unzip(file?.content).at(-1)).toEqual({ path: 'images/picture-1.jpg', content: TIDE });
  });

  it('are none in a week without', () => {
    expect(plan({ lessons: [{ quizzes: [] }] })).toEqual([]);
  });

  it('come out byte for byte the same again', () => {
    const options = { lessons: lesson('monday', 1) };
    expect(plan(options)).toEqual(plan(options));
  });
});

describe('the identifier of a quiz', () => {
  const usual = readIdentifier({ lessons: lesson('monday', 1) });

  it('is a name of XML that hangs on nothing of the questions', () => {
    expect(usual).toMatch(/^quiz-[0-9a-f]{12}-package$/);
    expect(readIdentifier({ lessons: [{ quizzes: [buildQuiz([open])] }] })).toBe(usual);
  });

  it.each<[string, FakeWeekOptions]>([
    ['another date', { plan: { begins: '2026-08-03' } }],
    ['another week', { plan: { id: 'اسبوع' } }],
    ['another school', { school: { id: 'other' } }],
    ['another day', { lessons: lesson('wednesday', 1) }],
    ['another lesson of the day', { lessons: [{ slug: 'monday-lesson-2', quizzes: [buildQuiz([open])] }] }],
    ['another quiz of the lesson', { lessons: [{ quizzes: [{ ...buildQuiz([open]), number: 2 }] }] }],
  ])('is another one for %s', (_, options) => {
    const other = readIdentifier({ lessons: lesson('monday', 1), ...options });
    expect(other).toMatch(/^quiz-[0-9a-f]{12}-package$/);
    expect(other).not.toBe(usual);
  });
});
