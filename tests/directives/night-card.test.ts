import { getMoonPosition } from 'suncalc';
import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import type { DayBegins, Place } from '../../src/calendar/rules.ts';
import { computeStand, computeSunAndMoon, findLastRiseSet } from '../../src/calendar/sky.ts';
import { createLabels } from '../../src/content/labels.ts';
import type { Calendar } from '../../src/content/types.ts';
import { computeNightCard, renderNightCard } from '../../src/directives/night-card.ts';
import { stringifyHast } from '../../src/lesson/stringify-hast.ts';
import { ESTUARY, samplePlace, sampleRules } from '../calendar/sample-rules.ts';
import { listTextsOf } from './find-answers.ts';

const TROMSO = samplePlace(69.65, 18.96, 'Europe/Oslo');

function renderCard(dayBegins: DayBegins, classBegins: string, date = '2026-07-29', place: Place = ESTUARY) {
  const rules = sampleRules({ dayBegins });
  const calendar: Calendar = {
    ...rules,
    id: 'demo',
    title: 'Demo',
    language: 'en',
    keeper: 'A keeper',
    sharing: 'open',
    sentence: 'Tonight is {night}.',
    spokenNames: new Map(),
  };
  const card = computeNightCard(createAlmanac(rules, place), calendar, date, classBegins);
  const html = stringifyHast(renderNightCard(card, { labels: createLabels('en'), namesLanguage: 'en' }));
  const read = (name: string) => listTextsOf(html, 'p', name).map((text) => text.replace(/\s+([,.])/g, '$1'));
  return {
    date: read('tonight-date'),
    class: read('tonight-class'),
    name: read('tonight-name'),
    begins: read('tonight-begins'),
    sky: read('tonight-sky'),
    care: read('tonight-care'),
    drawn: read('tonight-drawn'),
  };
}

describe('a card for a night that class time has not reached', () => {
  it('shows both nights, each with the day and time it begins', () => {
    expect(renderCard('sunset', '09:00')).toMatchObject({
      date: ['Wednesday 29 July · from 5:25 pm'],
      name: ['Round Moon'],
      class: [
        'Class on Wednesday 29 July at 9:00 am is still in the night before, Night 15, which began on Tuesday 28 July at 5:24 pm. Round Moon begins on Wednesday 29 July at 5:25 pm.',
      ],
    });
  });

  it('does so for a class in the afternoon, and before sunrise where the day begins at sunrise', () => {
    expect(renderCard('sunset', '13:30').class[0]).toMatch(/^Class on Wednesday 29 July at 1:30 pm is still in/);
    const early = renderCard('sunrise', '07:00');
    expect(early.date).toEqual(['Wednesday 29 July · from 7:34 am']);
    expect(early.class[0]).toMatch(
      /^Class on Wednesday 29 July at 7:00 am is still in the night before, .* which began on Tuesday 28 July at 7:35 am\. .* begins on Wednesday 29 July at 7:34 am\.$/,
    );
  });

  it('names the day of a beginning after midnight', () => {
    // The Sun sets after midnight in the north of Norway in mid-May.
    const card = renderCard('sunset', '09:00', '2026-05-16', samplePlace(69.6, 18.9, 'Europe/Oslo'));
    expect(card.date[0]).toMatch(/^Saturday 16 May · from \d+:\d\d (?:pm|am on Sun 17 May)$/);
    expect(card.class[0]).toMatch(
      /begins on Sunday 17 May at 12:\d\d am\.$|begins on Saturday 16 May at 11:\d\d pm\.$/,
    );
  });
});

describe('a card for the night that class time is in', () => {
  it('says nothing of class time', () => {
    for (const [dayBegins, classBegins] of [
      ['midnight', '09:00'],
      ['midnight', '00:00'],
      ['sunrise', '09:00'],
      ['sunset', '19:00'],
    ] as const) {
      expect(renderCard(dayBegins, classBegins)).toMatchObject({ date: ['Wednesday 29 July'], class: [] });
    }
  });
});

describe('a card and the Sun', () => {
  const dates = Array.from(
    { length: 60 },
    (_, index) => `2026-0${6 + Math.floor(index / 30)}-${String((index % 30) + 1).padStart(2, '0')}`,
  );

  it('gives no time for a Moon near a Sun that is not fully down, and a caution with every thin one', () => {
    const places: Place[] = [ESTUARY, samplePlace(48.2, 5.1, 'Europe/Paris'), samplePlace(69.6, 18.9, 'Europe/Oslo')];
    let nearCount = 0;
    for (const place of places) {
      const almanac = createAlmanac(sampleRules(), place);
      for (const date of dates) {
        const { atMs, litFraction } = almanac.moonBestSeen(almanac.nightOn(date));
        const { sky, care, drawn } = renderCard('sunset', '19:00', date, place);
        expect(care.length).toBe(litFraction < 0.25 ? 1 : 0);
        // Airless -6 degrees; the air lifts the Sun by 0.6 there.
        const isLight = computeStand('sun', place, atMs).altitudeDegrees > -5.3;
        if (!isLight || computeSunAndMoon(place, atMs).apartDegrees >= 90) {
          expect(drawn).toHaveLength(1);
          continue;
        }
        nearCount += 1;
        expect([sky, drawn]).toEqual([['Too near the Sun to look for tonight.'], []]);
      }
    }
    expect(nearCount).toBeGreaterThan(10);
  });

  it.each([
    ['sunset', '2026-06-20', 'The Sun does not set here that day, so midnight stands in for sunset.'],
    ['sunset', '2026-12-20', 'The Sun does not rise here that day, so midnight stands in for sunset.'],
    ['sunrise', '2026-06-20', 'The Sun does not set here that day, so midnight stands in for sunrise.'],
    ['sunrise', '2026-12-20', 'The Sun does not rise here that day, so midnight stands in for sunrise.'],
  ] as const)('says when midnight stands in for %s, and why, on %s', (dayBegins, date, words) => {
    expect(renderCard(dayBegins, '09:00', date, TROMSO).begins).toEqual([words]);
    expect(renderCard('midnight', '09:00', date, TROMSO).begins).toEqual([]);
    expect(renderCard(dayBegins, '09:00').begins).toEqual([]);
  });

  it('says of a night that is all light or all dark that the Moon is not up at all, else not in the dark', () => {
    // In June the Moon is far south of the equator about its full phase, on 29 June.
    expect(renderCard('sunset', '09:00', '2026-06-27', TROMSO).sky).toEqual(['The Moon is not up at all this night']);
    const place = samplePlace(65.5, 20, 'Europe/Stockholm');
    expect(renderCard('sunset', '09:00', '2026-06-28', place).sky).toEqual([
      'The Moon is not up in the dark hours of this night',
    ]);
  });
});

describe('moonrise on a card in polar regions', () => {
  // Nights that hold two moonrises, of which the second begins the Moon's stretch; searched for once with this kit.
  it.each([
    ['Tromso', TROMSO, 'sunset', '2026-08-27', 'Moonrise 8:42 pm'],
    ['Tromso', TROMSO, 'sunrise', '2026-02-19', 'Moonrise 7:38 am'],
    ['Longyearbyen', samplePlace(78.22, 15.65, 'Arctic/Longyearbyen'), 'sunset', '2026-08-28', 'Moonrise 9:19 pm'],
    ['Alert', samplePlace(82.5, -62.35, 'America/Toronto'), 'sunset', '2026-09-25', 'Moonrise 5:51 pm'],
    ['McMurdo', samplePlace(-77.85, 166.67, 'Antarctica/McMurdo'), 'sunset', '2026-04-01', 'Moonrise 6:33 pm'],
  ] as const)('is the one that the Moon was up since: %s, %s, %s', (_, place, dayBegins, date, words) => {
    expect(renderCard(dayBegins, '09:00', date, place).sky[0]).toMatch(new RegExp(`^${words}(?: ·|$)`));
    const almanac = createAlmanac(sampleRules({ dayBegins }), place);
    const { atMs } = almanac.moonBestSeen(almanac.nightOn(date));
    const riseMs = findLastRiseSet('moon', 'rise', place, atMs, 2) ?? 0;
    const heightAt = (ms: number) =>
      getMoonPosition(new Date(ms), place.latitudeDegrees, place.longitudeDegrees).altitude;
    // suncalc's Moon is good to 0.3 degrees; half an hour of this slow Moon is more than 0.5 from the horizon's -0.8.
    expect(heightAt(riseMs - 3_600_000)).toBeLessThan(heightAt(riseMs));
    for (let ms = riseMs + 1_800_000; ms < atMs; ms += 600_000) expect(heightAt(ms)).toBeGreaterThan(-0.8);
  });
});
