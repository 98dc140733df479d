import { describe, expect, it } from 'vitest';
import { planLearnersPages } from '../../src/pack/plan-pages.ts';
import { buildFakeQuiz, buildFakeWeek } from './fake-week.ts';
import { sha256 } from './render-pages.ts';

describe('planLearnersPages', () => {
  it('moves the roles on by a seat from quiz to quiz over the whole week', () => {
    const week = buildFakeWeek({
      lessons: [
        { head: { day: 'monday' }, quizzes: [buildFakeQuiz(1), buildFakeQuiz(2)] },
        { head: { day: 'tuesday' }, quizzes: [] },
        { head: { day: 'wednesday' }, quizzes: [buildFakeQuiz(1)] },
      ],
    });
    const firstSeats = planLearnersPages(week, sha256).flatMap(({ content }) => {
      const [, role] = /<span class="role">(\w+)<\/span>/.exec(String(content)) ?? [];
      return role ?? [];
    });
    expect(firstSeats).toEqual(['Reader', 'Writer', 'Checker']);
  });
});
