import { describe, expect, it } from 'vitest';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, findInside, readText, renderPages } from '../render-pages.ts';

const renderStart = (...options: Parameters<typeof buildFakeWeek>) => {
  const page = renderPages(buildFakeWeek(...options)).get('index.html');
  if (page === undefined) throw new Error('No start page.');
  return page;
};

describe('renderStartPage', () => {
  it('shows a tab and a sheet for each day, each with its date', () => {
    const page = renderStart();
    expect(findAll(page, '.day-tab').map((tab) => tab.properties['href'])).toEqual(['#monday', '#wednesday']);
    expect(findAll(page, '.day-sheet').map((sheet) => sheet.properties['id'])).toEqual(['monday', 'wednesday']);
    expect(findAll(page, 'time').map((time) => time.properties['dateTime'])).toEqual([
      '2026-07-27',
      '2026-07-29',
      '2026-07-27',
      '2026-07-29',
      '2026-07-27',
      '2026-07-29',
    ]);
  });

  it('announces the eclipses of its week, with the cautions, and nothing when there are none', () => {
    expect(findAll(renderStart(), '.week-eclipses')).toEqual([]);
    const [notice] = findAll(renderStart({ plan: { begins: '2026-03-02' } }), '.week-eclipses');
    const text = notice === undefined ? '' : readText(notice);
    expect(text).toContain('Eclipse of the Moon, in the night from Tuesday 3 March to Wednesday 4 March');
    expect(text).toContain('An eclipse of the Moon does not harm the eyes.');
    const [solar] = findAll(renderStart({ plan: { begins: '2028-07-17' } }), '.week-eclipses');
    expect(solar === undefined ? '' : readText(solar)).toMatch(
      /Eclipse of the Sun, Saturday 22 July.*Never look at the Sun or near it\..*certified solar filters/,
    );
  });

  it('puts two lessons of a day on one sheet and says when each begins', () => {
    const page = renderStart({
      lessons: [{ head: { day: 'monday' } }, { head: { day: 'monday', begins: '13:30' }, slug: 'monday-2' }],
    });
    expect(findAll(page, '.day-sheet')).toHaveLength(1);
    const heads = findAll(page, '.lesson-block-head').map(readText);
    expect(heads[0]).toContain('begins at 9:00 am');
    expect(heads[1]).toContain('begins at 1:30 pm');
  });

  it('leads to the lesson, its steps, its sheets and its key', () => {
    const links = findAll(renderStart(), 'a').map((link) => link.properties['href']);
    expect(links).toEqual(
      expect.arrayContaining([
        '1-monday.html#step-1',
        'learners/1-monday-quiz-1.html',
        'learners/1-monday-1-sky-slip.html',
        'key-1-monday.html#monday-quiz-1',
      ]),
    );
  });

  it('gives the notes that count all week once, and a link to them from each day', () => {
    const page = renderStart();
    expect(readText(page).match(/The drum is in the cupboard\./g)).toHaveLength(1);
    expect(findAll(page, 'a').filter((link) => link.properties['href'] === '#good-to-know')).toHaveLength(2);
  });

  it('says on each day what to bring, to print, who sits where, where the answers are and what to do if something fails', () => {
    for (const sheet of findAll(renderStart(), '.day-sheet')) {
      expect(findInside(sheet, 'h4').map(readText)).toEqual([
        'What to do',
        'Bring',
        'Print for class',
        'Who sits where',
        'Answers',
        'If something fails',
      ]);
    }
  });

  it('moves the roles of the seats on from the first quiz of the week to the second', () => {
    const seats = findAll(renderStart(), '.seats').map(readText);
    expect(seats[0]).toBe(
      'Groups: Heron and KelpQuiz 1: Seat 1: Reader · Seat 2: Writer · Seat 3: Checker · Seat 4: Drummer',
    );
    expect(seats[1]).toContain('Seat 1: Writer · Seat 2: Checker · Seat 3: Drummer · Seat 4: Reader');
  });

  it('leaves out what there is nothing of', () => {
    const page = renderStart({
      plan: { reliefNotes: [] },
      school: { groups: [] },
      lessons: [{ head: { materials: [] }, quizzes: [], handouts: [] }],
    });
    expect(findAll(page, 'h4').map(readText)).toEqual(['What to do', 'If something fails']);
    expect(readText(page)).not.toContain('Good to know all week');
  });

  it('names the days of the week on each sheet, its own marked, for who has it on paper', () => {
    const lines = findAll(renderStart(), '.week-line');
    expect(lines.map(readText)).toEqual(Array(2).fill('Mon 27 JulEau claire 4Wed 29 JulEau claire 6'));
    expect(lines.map((line) => findInside(line, '.is-this').map(readText))).toEqual([
      ['Mon 27 JulEau claire 4'],
      ['Wed 29 JulEau claire 6'],
    ]);
  });

  it('hides the mark of today until the script finds that day', () => {
    const flags = findAll(renderStart(), '.today-flag');
    expect(flags).toHaveLength(4);
    expect(flags.every((flag) => flag.properties['hidden'] === true)).toBe(true);
  });

  it('names the one date of a week with one day', () => {
    const facts = findAll(renderStart({ lessons: [{}] }), '.week-facts').map(readText);
    expect(facts).toEqual(['Creek School · Years 3-4 · Made for Monday 27 July 2026']);
  });
});
