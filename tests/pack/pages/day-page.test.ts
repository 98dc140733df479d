import { describe, expect, it } from 'vitest';
import { buildFakeWeek, type FakeWeekOptions } from '../fake-week.ts';
import { findAll, readText, renderPages } from '../render-pages.ts';

const renderMonday = (options?: FakeWeekOptions) => {
  const page = renderPages(buildFakeWeek(options)).get('monday.html');
  if (page === undefined) throw new Error('No page for Monday.');
  return page;
};

const readFoot = (options?: FakeWeekOptions) => findAll(renderMonday(options), 'footer').map(readText).join('');

describe('renderDayPage', () => {
  it('says what the lesson is, when, for whom and how long', () => {
    const page = renderMonday();
    expect(findAll(page, 'h1').map(readText)).toEqual(['Lesson 1']);
    expect(findAll(page, '.lesson-head').map(readText)).toEqual([
      'Monday 27 July 2026 · Night: Eau claire 4Lesson 1Years 3-4 · begins at 9:00 am · 45 minutes',
    ]);
  });

  it('gives the lesson as it was resolved', () => {
    expect(findAll(renderMonday(), '.lesson-body').map(readText)).toEqual(['WelcomeStand in a circle.']);
  });

  it('leads to the lessons before and after, and no further', () => {
    const pages = renderPages(buildFakeWeek());
    const relations = (path: string) =>
      findAll(pages.get(path) ?? { type: 'root', children: [] }, 'a').flatMap(({ properties }) =>
        properties['rel'] === undefined ? [] : `${String(properties['rel'])} ${String(properties['href'])}`,
      );
    expect(relations('monday.html')).toEqual(['next wednesday.html']);
    expect(relations('wednesday.html')).toEqual(['prev monday.html']);
  });

  it('says how we know: the rule, the instant that began the month, and whose word comes first', () => {
    const foot = readFoot();
    expect(foot).toContain('A night begins at sunset and lasts until the next sunset.');
    expect(foot).toContain('the new Moon');
    expect(foot).toContain('new Moon: Tuesday 14 July, 9:25 pm');
    expect(foot).toContain('the word of the keeper, Keepers of the Creek, and local practice come first');
    expect(foot).toContain('not a tide table');
    expect(foot).toContain('Made up for tests.');
  });

  it('marks a close call, in words and not by its looks alone', () => {
    const week = buildFakeWeek();
    const { almanac } = week;
    const closeCalls = [{ what: 'opening-phase', marginMinutes: 40 }] as const;
    const explain = (date: string) => ({ ...almanac.explain(date), closeCall: true, closeCalls });
    const page = renderPages({ ...week, almanac: { ...almanac, explain } }).get('monday.html');
    if (page === undefined) throw new Error('No page for Monday.');
    const [marked, ...others] = findAll(page, '.close-call').map(readText);
    expect(others).toEqual([]);
    expect(marked).toMatch(/^Close call: .* is 40 minutes from the boundary of its night\. Check it by eye/);
    expect(findAll(renderMonday(), '.close-call')).toEqual([]);
  });

  it('gives the phase within the night as well', () => {
    const page = renderPages(buildFakeWeek()).get('wednesday.html');
    expect(readText(page ?? { type: 'root', children: [] })).toContain(
      'Within the night of Wednesday 29 July: full Moon, Wednesday 29 July, 9:25 pm',
    );
  });

  it.each([
    [1, 'Its first night is 1 night later.'],
    [-2, 'Its first night is 2 nights earlier.'],
  ])('says that the month begins %i nights off', (offset, words) => {
    expect(readFoot({ calendar: { monthBegins: { at: 'full-moon', offset } } })).toContain(words);
  });
});
