import { describe, expect, it } from 'vitest';
import { buildWeek, listTexts, makeWeek, openContent, writeLesson } from './build-week.ts';

const setting = openContent();

const build = (score: string) => {
  const files = makeWeek(
    {
      'monday.md': writeLesson('Monday.', { day: 'monday' }),
      'wednesday.md': writeLesson(`${score}\n\n:::handout[Sheet]\n${score}\n:::`),
    },
    { days: ['monday', 'wednesday'] },
  );
  const { week, plan, diagnostics } = buildWeek(files, setting);
  if (week === undefined || plan === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const texts = listTexts(plan);
  const learner = texts.get('learners/3-wednesday-1-sheet.html') ?? '';
  const teacher = texts.get('3-wednesday.html') ?? '';
  return {
    tells: week.lessons[1]?.tells,
    learner: /<div class="score-strip">.*(?=<\/main>)/s.exec(learner)?.[0] ?? '',
    teacher,
  };
};

const listNames = (html: string): (string | undefined)[] =>
  [...html.matchAll(/<p class="strip-title"><span lang="en">([^<]+)</g)].map(([, name]) => name);

describe('::score', () => {
  it('tells a quiz which dates a handout gives away: those of the week, or the lesson’s own', () => {
    expect(build('::score{nights=this-week}').tells).toEqual(['2026-07-27', '2026-07-29']);
    expect(build('::score{nights=up-to-tonight}').tells).toEqual(['2026-07-29']);
    expect(build('::score{nights=up-to-tonight on=monday}').tells).toEqual(['2026-07-27']);
    expect(build('::score').tells).toEqual([]);
    expect(build('::score{nights="High Water"}').tells).toEqual([]);
  });

  it('has dates and tonight for the teacher, and neither for learners', () => {
    const { learner, teacher } = build('::score');
    expect(teacher).toContain('<b>16</b> · Wed 29 Jul');
    expect(teacher.match(/is-tonight/g)?.length).toBeGreaterThan(0);
    expect(learner.replace(/<svg.*?<\/svg>/gs, '')).not.toMatch(/\bJul\b|\bAug\b|2026|<b>\d|is-tonight|Tonight/);
    expect(listNames(learner)).toEqual(listNames(teacher));
  });

  it('shows the nights that this month has, in the order in which they come', () => {
    expect(listNames(build('::score').learner)).toHaveLength(29);
    expect(listNames(build('::score{nights="Last Boats..Dark Water"}').learner)).toEqual([
      'Hidden Moon',
      'Maybe Moon',
      'Lemon Rind',
      'Lost in Light',
    ]);
  });

  it('counts the beats of a night in its whole group, with a bar line where a group begins and ends', () => {
    const { learner } = build('::score{nights="Heron Feather..Half Shell"}');
    const beats = [...learner.matchAll(/<g class="score-(beat|strong)">.*?<text[^>]*>(\d+)</gs)].map(
      ([, kind, count]) => `${kind} ${count}`,
    );
    expect(beats).toEqual(['beat 2', 'beat 3', 'beat 4', 'beat 5', 'strong 1']);
    const bars = [...learner.matchAll(/<svg [^>]*class="score-sign".*?<\/svg>/gs)].map(
      ([sign]) => (sign.match(/stroke-width="3.4"/g) ?? []).length,
    );
    expect(bars).toEqual([0, 0, 0, 1, 1]);
  });

  it('draws the seas once for each score of a page', () => {
    const { teacher } = build('::score\n\n::score{nights="High Water"}');
    expect([...teacher.matchAll(/ id="(score-\d-seas)"/g)].map(([, id]) => id)).toEqual([
      'score-1-seas',
      'score-2-seas',
    ]);
    expect(new Set([...teacher.matchAll(/href="#(score-\d-seas)"/g)].map(([, id]) => id)).size).toBe(2);
  });

  it('tells in words what the pictures show', () => {
    const { learner } = build('::score{nights="Round Moon"}');
    expect(learner).toContain('<p class="visually-hidden">The Moon is full and round. Draw a great round.</p>');
  });
});
