import { describe, expect, it } from 'vitest';
import { renderLearnersPage } from '../../../src/pack/pages/learners-page.ts';
import { buildFakeWeek } from '../fake-week.ts';
import { buildFrame, findAll, readText } from '../render-pages.ts';

const FRAME = { ...buildFrame(buildFakeWeek()), path: 'learners/index.html' };
const sheet = (name: string) => ({ title: name, kind: 'handout', path: `learners/${name}.html` });

describe('renderLearnersPage', () => {
  it('lists pages by day in order, a date once, days without a page left out', () => {
    const page = renderLearnersPage({
      ...FRAME,
      days: [
        { date: '2026-07-27', sheets: [sheet('a')] },
        { date: '2026-07-27', sheets: [sheet('b')] },
        { date: '2026-07-28', sheets: [] },
        { date: '2026-07-29', sheets: [sheet('c')] },
      ],
    });
    expect(findAll(page, 'h2').map(readText)).toEqual(['Monday 27 July', 'Wednesday 29 July']);
    const links = findAll(page, 'a').map(({ properties }) => properties['href']);
    expect(links).toEqual(['#main', 'a.html', 'b.html', 'c.html']);
  });

  it('says so when there is nothing', () => {
    const page = renderLearnersPage({ ...FRAME, days: [{ date: '2026-07-27', sheets: [] }] });
    expect(findAll(page, 'main').map(readText)).toEqual(['There are no papers or handouts this week.']);
  });
});
