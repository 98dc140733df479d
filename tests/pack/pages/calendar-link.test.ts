import { describe, expect, it } from 'vitest';
import { CALENDAR_PATH } from '../../../src/pack/plan-calendar.ts';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, readText, renderPages } from '../render-pages.ts';

describe('the link to the nights as events', () => {
  const linked = [...renderPages(buildFakeWeek())].flatMap(([path, page]) =>
    findAll(page, 'a')
      .filter(({ properties }) => properties['href'] === CALENDAR_PATH)
      .map((link) => [path, readText(link)]),
  );

  it('stands on the start page once, in plain words, and on no other', () => {
    expect(linked).toEqual([['index.html', 'The nights of this week for the calendar on your computer or phone']]);
  });
});
