import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { renderHandoutPage } from '../../../src/pack/pages/handout-page.ts';
import { buildFakeWeek } from '../fake-week.ts';
import { buildFrame, findAll, readText } from '../render-pages.ts';

describe('renderHandoutPage', () => {
  const handout = { title: 'Sky slip', page: 'monday-1-sky-slip', body: [h('p', 'Draw the Moon.')], hasRun: false };
  const page = renderHandoutPage(handout, buildFrame(buildFakeWeek()));

  it('has lines for a name and a date, then the title, then what the author wrote', () => {
    expect(findAll(page, 'main').map(readText)).toEqual([
      'Name Date Sky slipMonday 27 July · Creek SchoolDraw the Moon.',
    ]);
    expect(findAll(page, '.write-line')).toHaveLength(2);
  });

  it('links to the list for learners and nothing else', () => {
    expect(findAll(page, 'a').map(({ properties }) => properties['href'])).toEqual(['#main', 'index.html']);
  });
});
