import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { MS_PER_DAY } from '../../src/calendar/day-number.ts';
import type { Place } from '../../src/calendar/rules.ts';
import { computeMoonPose, findRiseSet, findSunSinking } from '../../src/calendar/sky.ts';
import { ESTUARY, samplePlace, sampleRules, utc } from './sample-rules.ts';

const estuary = createAlmanac(sampleRules(), ESTUARY);

/** Whether the Moon is above the horizon at any of many instants of a stretch, by its altitude alone. */
function isEverHigh(place: Place, fromMs: number, untilMs: number, altitudeDegrees: number): boolean {
  for (let atMs = fromMs; atMs < untilMs; atMs += 600_000) {
    if (computeMoonPose(place, atMs).altitudeDegrees > altitudeDegrees) return true;
  }
  return false;
}

describe('moonBestSeen', () => {
  it('looks at the end of civil twilight when the Moon is up then', () => {
    // Two days before the full Moon of 29 July 2026: it rises before sunset.
    const record = estuary.nightOn('2026-07-27');
    const view = estuary.moonBestSeen(record);
    expect(view.atMs).toBe(findSunSinking(-6, ESTUARY, record.beginsMs, 1));
    expect(view.up).toBe(true);
    expect(view.altitudeDegrees).toBeGreaterThan(10);
  });

  it('looks in the middle of its time above the horizon when it rises later', () => {
    const record = estuary.nightOn('2026-08-06');
    const { sunriseMs } = estuary.skyOf(record);
    const riseMs = findRiseSet('moon', 'rise', ESTUARY, record.beginsMs, 1) ?? 0;
    const view = estuary.moonBestSeen(record);
    expect(sunriseMs).not.toBeNull();
    expect(Math.abs(view.atMs - (riseMs + (sunriseMs ?? 0)) / 2)).toBeLessThanOrEqual(1);
    expect(view).toMatchObject({ up: true, waxing: false });
  });

  it('looks in the middle of the short while before it sets when that is before the end of twilight', () => {
    const findNext = (event: 'rise' | 'set', fromMs: number) =>
      findRiseSet('moon', event, ESTUARY, fromMs, 2) ?? fromMs;
    const candidates = [...estuary.nights('2026-01-01', '2026-12-31')].filter((record) => {
      const { sunriseMs } = estuary.skyOf(record);
      const duskMs = findSunSinking(-6, ESTUARY, record.beginsMs, 1) ?? record.beginsMs;
      return findNext('set', record.beginsMs) < duskMs && findNext('rise', record.beginsMs) > (sunriseMs ?? 0);
    });
    expect(candidates.length).toBeGreaterThan(0);
    for (const record of candidates) {
      const middleMs = (record.beginsMs + findNext('set', record.beginsMs)) / 2;
      expect(Math.abs(estuary.moonBestSeen(record).atMs - middleMs)).toBeLessThanOrEqual(1);
    }
  });

  it('shows the Moon at its highest, not up, on a night when it is never up in the dark', () => {
    const nights = [...estuary.nights('2026-01-01', '2026-12-31')];
    const moonless = nights.filter((record) => !estuary.moonBestSeen(record).up);
    expect(moonless.length).toBeGreaterThan(5);
    expect(moonless.length).toBeLessThan(30);
    for (const record of moonless) {
      expect(estuary.moonBestSeen(record)).toEqual(estuary.moonHighest(record));
      expect(estuary.skyOf(record).illuminatedFraction).toBeLessThan(0.03);
    }
  });

  it.each([
    ['41 S', ESTUARY],
    ['48 N', samplePlace(48, 2, 'Europe/Paris')],
    ['the midnight sun and polar night at 69.65 N', samplePlace(69.65, 18.96, 'Europe/Oslo')],
  ] as const)('says truly whether the Moon is up in the dark at %s, and agrees with moonHighest', (_, place) => {
    const almanac = createAlmanac(sampleRules(), place);
    let index = 0;
    for (const record of almanac.nights('2026-01-01', '2026-12-31')) {
      index += 1;
      if (index % 6 !== 0) continue;
      const view = almanac.moonBestSeen(record);
      expect(almanac.moonHighest(record).up).toBe(view.up);
      const { sunsetMs, sunriseMs } = almanac.skyOf(record);
      if (sunsetMs === null || sunriseMs === null) continue;
      // Rise and set are told by the upper limb: the centre is then within half a degree of the horizon.
      if (isEverHigh(place, sunsetMs, sunriseMs, 0.5)) expect(view.up, record.date).toBe(true);
      if (view.up) expect(isEverHigh(place, sunsetMs, sunriseMs, -1), record.date).toBe(true);
      if (view.up) expect(view.altitudeDegrees).toBeGreaterThan(-0.5);
      if (view.up) expect(view.atMs >= sunsetMs && view.atMs <= sunriseMs).toBe(true);
    }
  });

  it.each([
    ['Tromso', samplePlace(69.65, 18.96, 'Europe/Oslo')],
    ['Longyearbyen', samplePlace(78.22, 15.65, 'Arctic/Longyearbyen')],
    ['Alert', samplePlace(82.5, -62.35, 'America/Toronto')],
    ['McMurdo', samplePlace(-77.85, 166.67, 'Antarctica/McMurdo')],
    ['the south pole', samplePlace(-90, 0, 'UTC')],
  ])('looks within the night at %s, whatever the Sun does', (_, place) => {
    for (const dayBegins of ['sunset', 'sunrise'] as const) {
      const almanac = createAlmanac(sampleRules({ dayBegins }), place);
      for (const record of almanac.nights('2026-01-01', '2026-12-31')) {
        const { beginsMs, endsMs } = record;
        for (const { atMs } of [almanac.moonBestSeen(record), almanac.moonHighest(record)]) {
          expect(atMs >= beginsMs && atMs < endsMs, `${record.date} ${dayBegins}`).toBe(true);
        }
      }
    }
  });

  it.each([
    // Midnight sun, polar night; at the south pole the Sun sets on 23 March and the night of the 22nd ends with that.
    ['Tromso', samplePlace(69.65, 18.96, 'Europe/Oslo'), ['2026-06-21', '2026-12-21']],
    ['Longyearbyen', samplePlace(78.22, 15.65, 'Arctic/Longyearbyen'), ['2026-06-10', '2026-12-15']],
    ['McMurdo', samplePlace(-77.85, 166.67, 'Antarctica/McMurdo'), ['2026-06-26', '2026-12-04']],
  ] as const)('looks for the Moon in the whole of a night without sunset at %s', (_, place, dates) => {
    const almanac = createAlmanac(sampleRules(), place);
    for (const date of dates) {
      const record = almanac.nightOn(date);
      expect(record.beginsWith).toBe('midnight');
      const isUp = isEverHigh(place, record.beginsMs, record.endsMs, 0);
      expect(almanac.moonBestSeen(record).up, date).toBe(isUp);
    }
  });

  it('leans the young crescent to the left in the south and to the right in the north', () => {
    // Reasoned beside the same test of sky.ts; here for the evening that the almanac picks, three nights after conjunction.
    const paris = createAlmanac(sampleRules(), samplePlace(48, 2, 'Europe/Paris'));
    for (const month of ['02', '04', '06', '08', '10', '12']) {
      for (const [almanac, least, most] of [
        [estuary, 0, 180],
        [paris, 180, 360],
      ] as const) {
        const record = almanac.nightsOfMonth(`2026-${month}-15`)[3];
        if (!record) throw new Error('no fourth night');
        const view = almanac.moonBestSeen(record);
        expect(view).toMatchObject({ up: true, waxing: true });
        expect(view.brightLimbDegrees).toBeGreaterThan(least);
        expect(view.brightLimbDegrees).toBeLessThan(most);
      }
    }
  });
});

describe('moonHighest', () => {
  it('takes the transit nearest the middle between sunset and sunrise', () => {
    for (const record of estuary.nightsOfMonth('2026-07-29')) {
      const { sunsetMs, sunriseMs } = estuary.skyOf(record);
      const middleMs = ((sunsetMs ?? 0) + (sunriseMs ?? 0)) / 2;
      const { atMs, azimuthDegrees } = estuary.moonHighest(record);
      // Half a lunar day at most: 12 h 25 min, and up to a quarter of an hour more since lunar days differ.
      expect(Math.abs(atMs - middleMs)).toBeLessThan(12.7 * 3_600_000);
      expect(Math.min(azimuthDegrees, 360 - azimuthDegrees)).toBeLessThan(0.01);
    }
  });

  it('is an hour or so after midnight on the night of the full Moon', () => {
    const view = estuary.moonHighest(estuary.nightOn('2026-07-29'));
    expect(Math.abs(view.atMs - utc('2026-07-29T12:26'))).toBeLessThan(3_600_000);
    expect(view.altitudeDegrees).toBeGreaterThan(60);
  });
});

describe('skyOf', () => {
  it('finds each phase in one night and no other', () => {
    const phases = [...estuary.nights('2000-01-01', '2000-12-31')].flatMap((record) => {
      const { phase } = estuary.skyOf(record);
      if (!phase) return [];
      expect(phase.atMs >= record.beginsMs && phase.atMs < record.endsMs).toBe(true);
      return [phase.name];
    });
    // 49 or 50 phases in a year; those of 2000 are counted in reference/usno-phases.ts, with two more after its last line.
    expect(phases.length).toBe(49);
    expect(phases.slice(0, 5)).toEqual(['new-moon', 'first-quarter', 'full-moon', 'last-quarter', 'new-moon']);
  });

  it('counts the age from the last conjunction and lights the Moon accordingly', () => {
    for (const record of estuary.nights('2026-07-01', '2026-08-31')) {
      const { moonAgeDays, illuminatedFraction } = estuary.skyOf(record);
      expect(moonAgeDays >= 0 && moonAgeDays < 29.9).toBe(true);
      // An even Moon would be lit by (1 - cos(age)) / 2; the true one strays by up to a day and a half.
      const even = (1 - Math.cos((2 * Math.PI * moonAgeDays) / 29.53)) / 2;
      expect(Math.abs(illuminatedFraction - even)).toBeLessThan(0.15);
    }
  });

  it('gives the Moon rise and set that fall within the night, or null', () => {
    for (const record of estuary.nights('2026-07-01', '2026-08-31')) {
      const { moonriseMs, moonsetMs } = estuary.skyOf(record);
      for (const [event, atMs] of [
        ['rise', moonriseMs],
        ['set', moonsetMs],
      ] as const) {
        const next = findRiseSet('moon', event, ESTUARY, record.beginsMs, 2);
        expect(atMs).toBe(next !== null && next < record.endsMs ? next : null);
      }
    }
  });

  it('gives sunset and the sunrise that follows whatever the night begins with', () => {
    for (const dayBegins of ['sunset', 'midnight', 'sunrise'] as const) {
      const almanac = createAlmanac(sampleRules({ dayBegins }), ESTUARY);
      const { sunsetMs, sunriseMs } = almanac.skyOf(almanac.nightOn('2026-07-29'));
      expect([sunsetMs, sunriseMs].map((ms) => Math.floor((ms ?? 0) / 1000) * 1000)).toEqual([
        utc('2026-07-29T05:25:41'),
        utc('2026-07-29T19:33:08'),
      ]);
    }
  });

  it('gives null where the Sun does not set or rise', () => {
    const tromso = createAlmanac(sampleRules(), samplePlace(69.65, 18.96, 'Europe/Oslo'));
    for (const date of ['2026-06-21', '2026-12-21']) {
      expect(tromso.skyOf(tromso.nightOn(date))).toMatchObject({ sunsetMs: null, sunriseMs: null });
    }
    const night = tromso.nightOn('2026-06-21');
    expect(tromso.moonBestSeen(night).atMs - night.beginsMs).toBeLessThan(MS_PER_DAY);
  });
});
