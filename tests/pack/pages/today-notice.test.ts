import { describe, expect, it } from 'vitest';
import { buildFakeWeek, type FakeWeekOptions } from '../fake-week.ts';
import { findAll, findInside, readText, renderPages } from '../render-pages.ts';

function listSpells(options: FakeWeekOptions = {}): [string, string][] {
  const page = renderPages(buildFakeWeek(options)).get('index.html');
  const [notice] = page === undefined ? [] : findAll(page, '.today-notice');
  if (notice === undefined) throw new Error('No notice.');
  expect(notice.properties).toMatchObject({ hidden: true, dataTimeZone: 'Pacific/Auckland' });
  return findInside(notice, 'p').map((line) => {
    expect(line.properties['hidden']).toBe(true);
    return [String(line.properties['dataFrom']), readText(line)];
  });
}

describe('renderTodayNotice', () => {
  it('has a line for each stretch of dates, hidden until the script shows the one that holds', () => {
    expect(listSpells().map(([from]) => from)).toEqual([
      '0000-00-00',
      '2026-07-27',
      '2026-07-28',
      '2026-07-29',
      '2026-07-30',
    ]);
  });

  it('says which night it is, that no lesson is that day, and kindly that it is early or late', () => {
    const [early, monday, gap, wednesday, late] = listSpells().map(([, words]) => words);
    expect(early).toMatch(/^You are early/);
    expect(monday).toBe('Today is Monday 27 July. Its night is Eau claire 4. Go to today Open the lesson');
    expect(gap).toBe('There is no lesson in this pack today. The next one is on Wednesday 29 July.');
    expect(wednesday).toContain('Eau claire 6');
    expect(late).toContain('for other dates it has to be built again');
  });

  it('has no gap between days that follow one another, over the end of a month too', () => {
    const lessons = [{ head: { day: 'friday' } }, { head: { day: 'saturday' } }] as const;
    expect(listSpells({ lessons }).map(([from]) => from)).toEqual([
      '0000-00-00',
      '2026-07-31',
      '2026-08-01',
      '2026-08-02',
    ]);
  });
});
