import { describe, expect, it } from 'vitest';
import { planPdfs } from '../../../src/pack/pdf/plan-pdfs.ts';
import { buildFakeQuiz, buildFakeWeek } from '../fake-week.ts';

describe('planPdfs', () => {
  it('sets apart what is copied once, for each group and for everyone, learners’ in their own part', () => {
    const lessons = [
      { head: { day: 'monday' }, quizzes: [buildFakeQuiz(1), buildFakeQuiz(2)] },
      { head: { day: 'wednesday' }, quizzes: [] },
    ] as const;
    const planned = planPdfs(buildFakeWeek({ lessons }));
    expect(planned.map(({ path, isOneSided }) => [path, isOneSided])).toEqual([
      ['pdf/fake-week-teacher.pdf', false],
      ['pdf/fake-week-wall-a3.pdf', true],
      ['learners/pdf/fake-week-papers.pdf', true],
      ['learners/pdf/fake-week-handouts.pdf', true],
    ]);
    const [teacher, wall, papers, handouts] = planned.map(({ pages }) => pages);
    expect(teacher?.slice(0, 3)).toEqual(['index.html', '1-monday.html', '3-wednesday.html']);
    expect(teacher?.slice(3, -1).every((path) => path.startsWith('key'))).toBe(true);
    expect(teacher?.at(-1)).toBe('gestures.html');
    expect(wall).toEqual(['score.html']);
    expect(papers).toEqual(['learners/1-monday-quiz-1.html', 'learners/1-monday-quiz-2.html']);
    expect(handouts).toEqual(['learners/1-monday-1-sky-slip.html', 'learners/3-wednesday-1-sky-slip.html']);
  });

  it('leaves out what would be empty', () => {
    const week = buildFakeWeek({ lessons: [{ head: { day: 'monday' }, quizzes: [], handouts: [] }] });
    expect(planPdfs(week).map(({ path }) => path)).toEqual(['pdf/fake-week-teacher.pdf', 'pdf/fake-week-wall-a3.pdf']);
  });

  it.each([
    ['Été à l’eau', 'pdf/ete-a-l-eau-teacher.pdf'],
    ['夜', 'pdf/teacher.pdf'],
  ])('calls files of the week %s in ASCII', (id, path) => {
    expect(planPdfs(buildFakeWeek({ plan: { id } }))[0]?.path).toBe(path);
  });

  it('gives each a title of its own, with the week’s', () => {
    const titles = planPdfs(buildFakeWeek()).map(({ title }) => title);
    expect(new Set(titles).size).toBe(4);
    expect(titles.every((title) => title.startsWith('A week by the creek'))).toBe(true);
  });
});
