import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { renderName } from '../../../src/content/render-name.ts';
import { buildFakeWeek, type FakeWeekOptions } from '../fake-week.ts';
import { findAll, findInside, readText, renderPages } from '../render-pages.ts';

const renderMonday = (options?: FakeWeekOptions) => {
  const page = renderPages(buildFakeWeek(options)).get('1-monday.html');
  if (page === undefined) throw new Error('No page for Monday.');
  return page;
};

const readFoot = (options?: FakeWeekOptions) => findAll(renderMonday(options), 'footer').map(readText).join('');

describe('renderDayPage', () => {
  it('says what the lesson is, when, for whom and how long', () => {
    const page = renderMonday();
    expect(findAll(page, 'h1').map(readText)).toEqual(['Lesson 1']);
    expect(findAll(page, '.lesson-head').map(readText)).toEqual([
      'Teacher onlyMonday 27 July 2026 · Night: Eau claire 4Lesson 1Years 3-4 · begins at 9:00 am · 45 minutes',
    ]);
  });

  it('gives the lesson as it was resolved', () => {
    expect(findAll(renderMonday(), '.lesson-body').map(readText)).toEqual(['WelcomeStand in a circle.']);
  });

  it('lists what is needed at once before what the lesson is for', () => {
    const heads = findAll(renderMonday(), '.overview-part').map((part) => findInside(part, 'h2').map(readText).join());
    expect(heads).toEqual(['Steps', 'Bring', 'Print for class', 'Answers', 'Learning intentions', 'Success criteria']);
  });

  it('tells of the names that it shows, and leads to them from where they stand', () => {
    const tonight = h('p', [renderName('Eau claire 4', 'fr')]);
    const page = renderMonday({ lessons: [{ body: [tonight] }] });
    const links = findAll(page, '.name-link');
    expect(links.map(({ properties }) => properties['href'])).toEqual(['#name-night-14', '#name-night-14']);
    const [names] = findAll(page, '.names');
    const entries = names === undefined ? [] : findInside(names, 'li');
    expect(entries.map(({ properties }) => properties['id'])).toEqual(['name-night-14']);
    expect(entries.map(readText)).toEqual(['Eau claire 4 · say: dire Eau claire 4 · see its gesture']);
    expect(entries.flatMap((entry) => findInside(entry, 'a')).map(({ properties }) => properties['href'])).toEqual([
      'gestures.html#night-14',
    ]);
  });

  it('says on each printed sheet which lesson and day it is, and that it is for the teacher', () => {
    const [style] = findAll(renderMonday(), 'style').map(({ children }) => children[0]);
    expect(style?.type === 'text' ? style.value : '').toContain(
      '@bottom-left { content: "Lesson 1 · Monday 27 July · A week by the creek · Teacher only"',
    );
  });

  it('leads to the lessons before and after, and no further', () => {
    const pages = renderPages(buildFakeWeek());
    const relations = (path: string) =>
      findAll(pages.get(path) ?? { type: 'root', children: [] }, 'a').flatMap(({ properties }) =>
        properties['rel'] === undefined ? [] : `${String(properties['rel'])} ${String(properties['href'])}`,
      );
    expect(relations('1-monday.html')).toEqual(['next 3-wednesday.html']);
    expect(relations('3-wednesday.html')).toEqual(['prev 1-monday.html']);
  });

  it('announces the eclipses of its date, with the cautions, and those of other dates not', () => {
    const readNotice = (begins: string, day: 'monday' | 'tuesday' | 'wednesday' | 'saturday') => {
      const pages = renderPages(buildFakeWeek({ plan: { begins }, lessons: [{ head: { day } }] }));
      const page = [...pages].find(([path]) => path.endsWith(`-${day}.html`))?.[1];
      return page === undefined ? 'no page' : findAll(page, '.date-eclipses').map(readText).join();
    };
    // The night from Tuesday 3 to Wednesday 4 March 2026, and Saturday 22 July 2028.
    const moon = readNotice('2026-03-02', 'tuesday');
    expect(moon).toMatch(/^EclipseEclipse of the Moon, in the night from Tuesday 3 March to Wednesday 4 March: /);
    expect(moon).toContain('The Moon is then in the north');
    expect(moon).toMatch(/An eclipse of the Moon does not harm the eyes\. Outside at night, .* only with an adult/);
    expect(readNotice('2026-03-02', 'monday')).toBe('');
    expect(readNotice('2026-03-02', 'wednesday')).toBe('');
    const sun = readNotice('2028-07-17', 'saturday');
    expect(sun).toMatch(/^EclipseEclipse of the Sun, Saturday 22 July: /);
    expect(sun).toMatch(/Never look at the Sun or near it\..*certified solar filters.*Sunglasses and smoked glass/);
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
    const month = { name: 'Mois du gel', number: 1, year: 2026, length: 30 };
    const call = {
      what: 'opening-phase',
      opens: 'this-month',
      firstDate: '2026-07-14',
      phase: 'new-moon',
      atMs: 0,
      marginMinutes: 40,
      isUnsure: false,
      otherwise: { night: 'Eau claire 4', nightOfMonth: 14, month },
    } as const;
    const closeCalls = [call];
    const explain = (date: string) => ({ ...almanac.explain(date), closeCall: true, closeCalls });
    const page = renderPages({ ...week, almanac: { ...almanac, explain } }).get('1-monday.html');
    if (page === undefined) throw new Error('No page for Monday.');
    const [marked, ...others] = findAll(page, '.close-call').map(readText);
    expect(others).toEqual([]);
    expect(marked).toMatch(
      /^Close call: .* 40 minutes from the boundary of its night\. Otherwise this night would be Eau claire 4: .*\. Check it by eye/,
    );
    expect(findAll(renderMonday(), '.close-call')).toEqual([]);
  });

  it('gives the phase within the night as well', () => {
    const page = renderPages(buildFakeWeek()).get('3-wednesday.html');
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
