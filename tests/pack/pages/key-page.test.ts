import { describe, expect, it } from 'vitest';
import { buildFakeQuiz, buildFakeWeek } from '../fake-week.ts';
import { findAll, findInside, listElements, readText, renderPages } from '../render-pages.ts';

const renderKey = (options: Parameters<typeof buildFakeWeek>[0] = {}, path = 'key-1-monday.html') => {
  const page = renderPages(buildFakeWeek(options)).get(path);
  if (page === undefined) throw new Error('No key.');
  return page;
};

describe('renderKeyPage', () => {
  it('says "Teacher only" in every group’s section and on every mark sheet', () => {
    const page = renderKey();
    const sections = [...findAll(page, '.group-key'), ...findAll(page, '.mark-sheet')];
    expect(sections).toHaveLength(3);
    for (const section of sections) expect(readText(section)).toContain('Teacher only');
  });

  it('gives letters, answers, other spellings, working and marks', () => {
    const [first] = findAll(renderKey(), '.key-answers').map(readText);
    expect(first).toContain('Question 1 once moreA the Sun (right)B the sea Has seen it shine on water.');
    expect(first).toContain('Say: The Sun always lights one half.1 mark');
    expect(first).toContain('4 nightsSay: Count on from tonight.2 marks');
    expect(first).toContain('the answer nobody else may seeAlso right: another spelling');
    expect(first).toContain('Capital letters, macrons and other marks on letters do not matter.1 mark');
  });

  it('numbers the answers as the papers do', () => {
    const numbers = listElements(renderKey()).flatMap(({ element, around }) =>
      element.tagName === 'li' && around.at(-1)?.tagName === 'ol' ? element.properties['value'] : [],
    );
    expect(numbers.slice(0, 3)).toEqual([1, 2, 3]);
  });

  it('has a mark sheet with a row for each group and a column for each question and the total', () => {
    const quizzes = [buildFakeQuiz(1, ['Heron', 'Kelp', 'Oyster'])];
    const page = renderKey({ lessons: [{ quizzes }] });
    const scopes = findAll(page, 'th').map(({ properties }) => properties['scope']);
    expect(scopes.filter((scope) => scope === 'col')).toHaveLength(5);
    expect(scopes.filter((scope) => scope === 'row')).toHaveLength(3);
    expect(findAll(page, 'td')).toHaveLength(12);
    expect(findAll(page, 'thead').map(readText)).toEqual(['Group1 1 mark2 2 marks3 1 markTotal 4 marks']);
  });

  it('names each group’s part and each answer by an id, and leads to the parts of a quiz', () => {
    const page = renderKey({ lessons: [{ quizzes: [buildFakeQuiz(1, ['Heron', 'Kelp'])] }] });
    const ids = findAll(page, '.group-key').map(({ properties }) => properties['id']);
    expect(ids).toEqual(['monday-quiz-1-g1', 'monday-quiz-1-g2']);
    const answers = listElements(page).flatMap(({ element: { properties } }) => properties['id'] ?? []);
    expect(answers).toContain('monday-quiz-1-g2-q3');
    const [jumps] = findAll(page, '.key-jumps');
    expect(readText(jumps ?? page)).toBe('Go to: Heron Kelp Mark sheet');
  });

  it('says on the mark sheet, which is printed alone, of which lesson and quiz it is', () => {
    const [caption] = findAll(renderKey(), 'caption').map(readText);
    expect(caption).toBe('Monday 27 July · Lesson 1 Mark sheet: Quiz 1 Teacher only');
  });

  it('has lower rows on the mark sheet of many groups', () => {
    const count = (groups: number) => {
      const names = Array.from({ length: groups }, (_, index) => `Group ${index + 1}`);
      return findAll(renderKey({ lessons: [{ quizzes: [buildFakeQuiz(1, names)] }] }), '.many').length;
    };
    expect([count(20), count(21)]).toEqual([0, 1]);
  });

  it('tells the roles of the seats, which move on over the quizzes of the week', () => {
    const day = { quizzes: [buildFakeQuiz(1), buildFakeQuiz(2)] };
    const week = { lessons: [{ ...day, head: { day: 'monday' } }, { head: { day: 'tuesday' } }] } as const;
    const pages = [renderKey(week), renderKey(week, 'key-2-tuesday.html')];
    const jobs = pages.flatMap((page) => findAll(page, '.key-jobs')).map(readText);
    const firstSeats = jobs.map((text) => /Seat 1: (\w+)/.exec(text)?.[1]);
    expect(firstSeats).toEqual(['Reader', 'Writer', 'Checker']);
  });

  it('is marked in the way round the pack, and says of which lesson it is', () => {
    const page = renderKey();
    const [here] = findAll(page, 'a').filter(({ properties }) => properties['ariaCurrent'] !== undefined);
    expect(here?.properties).toMatchObject({ href: 'key.html', ariaCurrent: 'true' });
    expect(findAll(page, 'title').map(readText)).toEqual([expect.stringMatching(/^Answer key · Monday 27 July · /)]);
  });
});

describe('renderKeyListPage', () => {
  const lessons = [
    { head: { day: 'monday' }, quizzes: [buildFakeQuiz(1), buildFakeQuiz(2)] },
    { head: { day: 'tuesday' }, quizzes: [] },
    { head: { day: 'wednesday' } },
  ] as const;

  it('leads to the keys, by lessons, and holds no answer', () => {
    const page = renderKey({ lessons }, 'key.html');
    expect(
      findAll(page, '.sheet-list')
        .flatMap((list) => findInside(list, 'a'))
        .map(({ properties }) => properties['href']),
    ).toEqual([
      'key-1-monday.html#monday-quiz-1',
      'key-1-monday.html#monday-quiz-2',
      'key-3-wednesday.html#wednesday-quiz-1',
    ]);
    expect(findAll(page, 'h2')).toHaveLength(2);
    expect(readText(page)).not.toContain('the answer nobody else may see');
  });

  it('has a place for each quiz where links of authors lead', () => {
    const ids = findAll(renderKey({ lessons }, 'key.html'), 'li').flatMap(({ properties }) => properties['id'] ?? []);
    expect(ids).toEqual(['monday-quiz-1', 'monday-quiz-2', 'wednesday-quiz-1']);
  });

  it('says so when the week has no quiz', () => {
    const page = renderKey({ lessons: [{ quizzes: [] }] }, 'key.html');
    expect(findAll(page, 'main').map(readText)).toEqual(['There is no quiz this week.']);
  });
});
