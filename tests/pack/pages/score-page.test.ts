import { describe, expect, it } from 'vitest';
import { listScoreMonths } from '../../../src/pack/pages/score-months.ts';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, readText, renderPages } from '../render-pages.ts';

const renderScore = (...options: Parameters<typeof buildFakeWeek>) => {
  const page = renderPages(buildFakeWeek(...options)).get('score.html');
  if (page === undefined) throw new Error('No score.');
  return page;
};

describe('renderScorePage', () => {
  it('draws the month and says the same nights in words, with dates and gestures', () => {
    const page = renderScore();
    expect(findAll(page, '.score')).toHaveLength(1);
    const nights = findAll(page, '.score-list').flatMap((list) => readText(list).match(/Eau \w+ \d+ · /g) ?? []);
    expect(nights).toHaveLength(29);
    expect(findAll(page, '.score-list').map(readText)[0]).toContain('Eau noire 1 · Tue 14 JulLift one hand.');
  });

  it('says from which side of the equator the Moon is seen', () => {
    expect(readText(renderScore())).toContain('seen from 41° south.');
    const place = { latitudeDegrees: 48.4, longitudeDegrees: 0, elevationMetres: 0, timeZone: 'UTC' };
    expect(readText(renderScore({ school: { place } }))).toContain('seen from 48° north.');
  });

  it('gives a sheet for each month the week lies in', () => {
    const lessons = [{ head: { day: 'monday' } }, { head: { day: 'friday' } }] as const;
    const page = renderScore({ plan: { begins: '2026-08-10' }, lessons });
    expect(findAll(page, '.score')).toHaveLength(2);
    expect(findAll(page, 'h2').map(readText)).toEqual([
      'Mois du gel: The same as a list',
      'Mois du vent: The same as a list',
    ]);
  });
});

describe('listScoreMonths', () => {
  it('keeps the nights of a group together and names the dates taught', () => {
    const [month] = listScoreMonths(buildFakeWeek());
    expect(month?.groups.map(({ name, nights }) => [name, nights.length])).toEqual([
      ['Eau noire', 10],
      ['Eau claire', 10],
      ['Eau basse', 9],
    ]);
    expect(month).toMatchObject({ firstDate: '2026-07-14', lastDate: '2026-08-11' });
    expect(month?.taught).toEqual(['2026-07-27', '2026-07-29']);
  });
});
