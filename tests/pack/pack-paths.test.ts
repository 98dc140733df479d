import { describe, expect, it } from 'vitest';
import { computePackPaths, linkBetween, listKeys, listPackPaths } from '../../src/pack/pack-paths.ts';
import { buildFakeQuiz, buildFakeWeek } from './fake-week.ts';

describe('computePackPaths', () => {
  it('names pages after the days, so that they sort by day, and learners’ pages in a folder of their own', () => {
    const week = buildFakeWeek({ lessons: [{ head: { day: 'monday' } }] });
    expect(listPackPaths(computePackPaths(week))).toEqual([
      'index.html',
      '1-monday.html',
      'key.html',
      'key-1-monday.html',
      'score.html',
      'gestures.html',
      'learners/index.html',
      'learners/1-monday-quiz-1.html',
      'learners/1-monday-1-sky-slip.html',
    ]);
  });

  it('keeps two lessons of a day and their quizzes apart', () => {
    const lessons = [
      { head: { day: 'monday' }, quizzes: [buildFakeQuiz(1), buildFakeQuiz(2)] },
      { head: { day: 'monday' }, slug: 'monday-lesson-2', stem: '1-monday-lesson-2' },
    ] as const;
    const [first, second] = computePackPaths(buildFakeWeek({ lessons })).lessons;
    expect(first).toMatchObject({
      page: '1-monday.html',
      papers: ['learners/1-monday-quiz-1.html', 'learners/1-monday-quiz-2.html'],
      key: 'key-1-monday.html',
      keyAnchors: ['monday-quiz-1', 'monday-quiz-2'],
    });
    expect(second).toMatchObject({
      page: '1-monday-lesson-2.html',
      papers: ['learners/1-monday-lesson-2-quiz-1.html'],
      key: 'key-1-monday-lesson-2.html',
      keyAnchors: ['monday-lesson-2-quiz-1'],
    });
  });

  it('has a key for a lesson with a quiz, and none for another', () => {
    const lessons = [{ head: { day: 'monday' }, quizzes: [] }, { head: { day: 'tuesday' } }] as const;
    const paths = computePackPaths(buildFakeWeek({ lessons }));
    expect(paths.lessons.map(({ key }) => key)).toEqual([undefined, 'key-2-tuesday.html']);
    expect(listKeys(paths)).toEqual(['key-2-tuesday.html']);
  });

  it('refuses a week in which two pages would be one file', () => {
    const lessons = [{ head: { day: 'monday' } }, { head: { day: 'monday' } }] as const;
    expect(() => computePackPaths(buildFakeWeek({ lessons }))).toThrow('`1-monday.html`');
  });
});

describe('linkBetween', () => {
  it.each([
    ['index.html', 'key.html', 'key.html'],
    ['index.html', 'learners/index.html', 'learners/index.html'],
    ['learners/a.html', 'learners/b.html', 'b.html'],
    ['learners/a.html', 'index.html', '../index.html'],
  ])('leads from %s to %s by %s', (from, to, link) => {
    expect(linkBetween(from, to)).toBe(link);
  });
});
