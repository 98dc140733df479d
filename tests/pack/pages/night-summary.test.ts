import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { computeNightCard } from '../../../src/directives/night-card.ts';
import { computePackPaths } from '../../../src/pack/pack-paths.ts';
import { renderNightSummary } from '../../../src/pack/pages/night-summary.ts';
import { createPageContext } from '../../../src/pack/pages/page-context.ts';
import { buildFakeWeek, type FakeWeekOptions } from '../fake-week.ts';
import { findInside, readText, sha256 } from '../render-pages.ts';

function render(classBegins: string, change: object = {}, options: FakeWeekOptions = {}) {
  const week = { ...buildFakeWeek(options), labels: createLabels('en') };
  const card = computeNightCard(week.almanac, week.calendar, '2026-07-27', classBegins);
  return renderNightSummary(
    createPageContext(week, computePackPaths(week), sha256),
    { ...card, ...change },
    classBegins,
  );
}

const read = (kind: string, ...given: Parameters<typeof render>) => findInside(render(...given), kind).map(readText);

describe('renderNightSummary', () => {
  it('says the name, how to say it and the sentence', () => {
    expect(read('.tonight-name', '09:00')).toEqual(['Eau claire 4']);
    expect(read('.tonight-say', '09:00')).toEqual(['say: dire Eau claire 4']);
    expect(read('.tonight-sentence', '09:00')).toEqual(['Cette nuit, Eau claire 4, en Mois du gel.']);
  });

  it('says in one line which night class time belongs to', () => {
    expect(read('.tonight-class', '09:00')).toEqual([
      'In class, at 9:00 am, it is still Eau claire 3; Eau claire 4 begins at 5:25 pm.',
    ]);
    expect(read('.tonight-class', '19:00')).toEqual(['In class, at 7:00 pm, it is already Eau claire 4.']);
  });

  it('leads to the name as it is spoken, where there is a recording', () => {
    const sound = { file: 'a.mp3', packName: 'night-1.mp3', mediaType: 'audio/mpeg', bytes: new Uint8Array() };
    const spokenNames = new Map([[14, { sound, credit: 'A. Speaker', permission: 'free' }]]);
    const links = findInside(render('09:00', {}, { calendar: { spokenNames } }), 'a');
    expect(links.map(({ properties }) => properties['href'])).toEqual(['sound/night-1.mp3']);
    expect(links.map(readText)).toEqual(['Hear Eau claire 4']);
  });

  it('says no time for a Moon near the Sun, but the caution', () => {
    expect(read('figcaption', '09:00')).toEqual(['Drawn as it stands here at 5:25 pm']);
    expect(read('figcaption', '09:00', { tooNearSun: true })).toEqual([]);
    expect(read('.tonight-care', '09:00', { tooNearSun: true })).toEqual(['Too near the Sun to look for tonight.']);
    const { moon } = computeNightCard(buildFakeWeek().almanac, buildFakeWeek().calendar, '2026-07-27', '09:00');
    const thin = { moon: { ...moon, litFraction: 0.1 } };
    expect(read('figcaption', '09:00', thin)).toEqual([]);
    expect(read('.tonight-care', '09:00', thin)).toEqual(['A crescent is only looked for with the Sun fully down.']);
  });
});
