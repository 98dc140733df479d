import { describe, expect, it } from 'vitest';
import { computePackPaths } from '../../../src/pack/pack-paths.ts';
import { describeLearningResource } from '../../../src/pack/pages/learning-resource.ts';
import { createPageContext } from '../../../src/pack/pages/page-context.ts';
import { buildFakeWeek, type FakeWeekOptions, SECRET } from '../fake-week.ts';
import { sha256 } from '../render-pages.ts';

function describeText(options?: FakeWeekOptions): string {
  const week = buildFakeWeek(options);
  return describeLearningResource(createPageContext(week, computePackPaths(week), sha256));
}

const describeWeek = (options?: FakeWeekOptions) => JSON.parse(describeText(options));

describe('describeLearningResource', () => {
  it('says what the content says, and no more', () => {
    const lesson = { '@type': 'LearningResource', learningResourceType: 'lesson plan', timeRequired: 'PT45M' };
    const teaches = ['We are learning to count nights.'];
    expect(describeWeek()).toEqual({
      '@context': 'https://schema.org',
      '@type': 'LearningResource',
      name: 'A week by the creek',
      description:
        'Lessons on Les Nuits du ruisseau, for Years 3-4: what to do each day, what to print, and the answers.',
      inLanguage: ['en'],
      learningResourceType: ['lesson plan', 'handout', 'quiz'],
      educationalLevel: 'Years 3-4',
      audience: [
        { '@type': 'EducationalAudience', educationalRole: 'teacher' },
        { '@type': 'EducationalAudience', educationalRole: 'student', audienceType: 'Years 3-4' },
      ],
      timeRequired: 'PT1H30M',
      teaches,
      temporalCoverage: '2026-07-27/2026-07-29',
      contentLocation: { '@type': 'School', name: 'Creek School' },
      about: { '@type': 'Thing', name: 'Les Nuits du ruisseau' },
      creditText: 'Keepers of the Creek',
      hasPart: [
        { ...lesson, name: 'Lesson 1', url: '1-monday.html', position: 1, temporalCoverage: '2026-07-27', teaches },
        { ...lesson, name: 'Lesson 2', url: '3-wednesday.html', position: 2, temporalCoverage: '2026-07-29', teaches },
      ],
    });
  });

  it.each([
    [[10], 'PT10M'],
    [[60], 'PT1H'],
    [[45, 45, 50], 'PT2H20M'],
    [[240, 240, 240, 240, 240, 240, 240], 'PT28H'],
  ])('adds lessons of %j minutes up to %s', (minutes, duration) => {
    const lessons = minutes.map((each, index) => ({
      head: { day: 'monday', minutes: each } as const,
      slug: `monday-lesson-${index + 1}`,
    }));
    expect(describeWeek({ lessons }).timeRequired).toBe(duration);
  });

  it('names one date of a week with one, and no sheets where there are none', () => {
    const { temporalCoverage, learningResourceType } = describeWeek({
      lessons: [{ head: { day: 'monday' }, quizzes: [], handouts: [] }],
    });
    expect(temporalCoverage).toBe('2026-07-27');
    expect(learningResourceType).toEqual(['lesson plan']);
  });

  it('names both languages where the author’s is not that of the fixed words', () => {
    expect(describeWeek({ school: { language: 'xx' } }).inLanguage).toEqual(['xx', 'en']);
  });

  it('cannot end the element that it stands in, and comes back as it was', () => {
    const title = '</script><script>alert("x")</script><!-- & \u2028';
    expect(describeText({ plan: { title } })).not.toContain('<');
    expect(describeWeek({ plan: { title } }).name).toBe(title);
  });

  it('holds no answer', () => {
    expect(describeText()).not.toContain(SECRET);
  });
});
