import { describe, expect, it } from 'vitest';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, findInside, readText, renderPages } from '../render-pages.ts';

describe('renderWeekTable', () => {
  const page = renderPages(
    buildFakeWeek({
      lessons: [
        { head: { day: 'monday' } },
        { head: { day: 'monday', begins: '13:30', materials: [] }, slug: 'monday-2', quizzes: [], handouts: [] },
        { head: { day: 'friday' } },
      ],
    }),
  ).get('index.html');
  const [table] = page === undefined ? [] : findAll(page, '.week-table');
  if (table === undefined) throw new Error('No table of the week.');

  it('has a body for each day, whose head spans its lessons', () => {
    const heads = findInside(table, 'tbody').map((body) => findInside(body, 'th'));
    expect(heads.map((cells) => cells.map(readText))).toEqual([['Mon 27 JulEau claire 4'], ['Fri 31 JulEau claire 8']]);
    expect(heads.map(([cell]) => cell?.properties['rowSpan'])).toEqual([2, undefined]);
  });

  it('says what each lesson is, what it needs and what is printed; a cell with nothing is empty', () => {
    const rows = findInside(table, 'tr').map((row) => findInside(row, 'td').map(readText));
    expect(rows).toEqual([
      [],
      ['Lesson 1 9:00 am · 45 minutesWelcome 45 minutes', 'a drum', 'Quiz 1 (2 papers)Sky slip (Handout)'],
      ['Lesson 2 1:30 pm · 45 minutesWelcome 45 minutes', '', ''],
      ['Lesson 3 9:00 am · 45 minutesWelcome 45 minutes', 'a drum', 'Quiz 1 (2 papers)Sky slip (Handout)'],
    ]);
  });

  it('gives each cell with content the head of its column, for screens on which it is a list', () => {
    const cells = findInside(table, 'td').filter(({ children }) => children.length > 0);
    expect([...new Set(cells.map(({ properties }) => properties['dataHead']))]).toEqual([
      'Lesson and steps',
      'Gather',
      'Print',
    ]);
  });
});
