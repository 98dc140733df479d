import { describe, expect, it } from 'vitest';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, readText, renderPages } from '../render-pages.ts';

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
        'key.html#monday-quiz-1',
      ]),
    );
  });

  it('gives the notes for a relief teacher once, and a link to them from each day', () => {
    const page = renderStart();
    expect(readText(page).match(/No drum: clap\./g)).toHaveLength(1);
    expect(findAll(page, 'a').filter((link) => link.properties['href'] === '#if-something-fails')).toHaveLength(2);
  });

  it('leaves out what there is nothing of', () => {
    const text = readText(
      renderStart({ plan: { reliefNotes: [] }, lessons: [{ head: { materials: [] }, quizzes: [], handouts: [] }] }),
    );
    for (const heading of ['Bring', 'Answers', 'Print for class', 'If something fails']) {
      expect(text).not.toContain(heading);
    }
  });

  it('hides the mark of today until the script finds that day', () => {
    const flags = findAll(renderStart(), '.today-flag');
    expect(flags).toHaveLength(4);
    expect(flags.every((flag) => flag.properties['hidden'] === true)).toBe(true);
  });

  it('names the one date of a week with one day', () => {
    const facts = findAll(renderStart({ lessons: [{}] }), '.week-facts').map(readText);
    expect(facts).toEqual(['Creek School · Years 3-4 · Monday 27 July 2026']);
  });
});
