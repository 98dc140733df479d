import { getMoonIllumination, getMoonPosition, getMoonTimes, getTimes } from 'suncalc';
import { describe, expect, it } from 'vitest';
import {
  classifyCrescent,
  computeCrescentQ,
  computeCrescentWidth,
  findClassLimit,
  findFirstCrescent,
} from '../../src/calendar/crescent.ts';
import { MS_PER_DAY, renderCivilDate } from '../../src/calendar/day-number.ts';
import { createLunations } from '../../src/calendar/lunations.ts';
import { createNightLine } from '../../src/calendar/night-line.ts';
import type { DayBegins, Place } from '../../src/calendar/rules.ts';
import { computeCrescentGeometry } from '../../src/calendar/sky.ts';
import { apparentSunLongitude, centuriesOf, meanMoon, skyOver } from '../reference/meeus-sky.ts';
import { ESTUARY, samplePlace, utc } from './sample-rules.ts';

const lunations = createLunations();

function searchAt(
  place: Place,
  from: string,
  visibility: 'A' | 'B' | 'C' | 'D' = 'B',
  dayBegins: DayBegins = 'sunset',
) {
  const line = createNightLine(dayBegins, place);
  const lunation = lunations.firstFrom('new-moon', utc(from));
  return findFirstCrescent(line, lunations.phaseInstant(lunation, 'new-moon'), visibility);
}

function renderDay(day: number | null): string | null {
  return day === null ? null : renderCivilDate(day);
}

describe('the classes', () => {
  // Limits: B. D. Yallop, NAO Technical Note 69 (1997), table of the q test, as the design cites them. Each limit belongs
  // to the class below it.
  it.each([
    [0.217, 'A'],
    [0.216, 'B'],
    [-0.013, 'B'],
    [-0.014, 'C'],
    [-0.159, 'C'],
    [-0.16, 'D'],
    [-0.231, 'D'],
    [-0.232, 'E'],
    [-0.292, 'E'],
    [-0.293, 'F'],
    [-9, 'F'],
  ])('of q = %d: %s', (q, expected) => {
    expect(classifyCrescent(q)).toBe(expected);
  });

  it('have the limits of the design, and no others can be asked for', () => {
    expect((['A', 'B', 'C', 'D'] as const).map(findClassLimit)).toEqual([0.216, -0.014, -0.16, -0.232]);
    expect(() => findClassLimit('G' as 'A')).toThrow('Unexpected visibility `G`'); // what no checked file holds
  });
});

describe('the formulas, worked by hand', () => {
  it('of q: 10 degrees over the Sun and half a minute wide', () => {
    // 11.8371 - 3.1613 + 0.182975 - 0.012725 = 8.84605; (10 - 8.84605) / 10.
    expect(computeCrescentQ(10, 0.5)).toBeCloseTo(0.115395, 9);
    expect(computeCrescentQ(11.8371, 0)).toBeCloseTo(0, 12);
  });

  it('of the width: parallax 1 degree, at 30 degrees, 60 degrees from the Sun', () => {
    // SD = 0.27245 x 60 = 16.347; lifted by 1 + 0.5 x 0.0174524 = 1.0087262; half of it.
    expect(computeCrescentWidth(1, 30, 60)).toBeCloseTo(16.347 * 1.0087262 * 0.5, 5);
    expect(computeCrescentWidth(1, 0, 0)).toBe(0);
  });
});

describe('the independent sky of the reference', () => {
  it('gives the Moon of Meeus, example 47.a', () => {
    // 1992 April 12, 0h TD; the book prints these with all terms.
    const { longitude, latitude, distanceKm } = meanMoon(centuriesOf(2448724.5));
    expect(longitude - 360 * Math.floor(longitude / 360)).toBeCloseTo(133.162655, 1);
    expect(Math.abs(longitude - 360 * Math.floor(longitude / 360) - 133.162655)).toBeLessThan(0.01);
    expect(Math.abs(latitude + 3.229126)).toBeLessThan(0.01);
    expect(Math.abs(distanceKm - 368409.7)).toBeLessThan(60);
  });

  it('gives the Sun of Meeus, example 25.a', () => {
    // 1992 October 13, 0h TD: apparent longitude 199.90895.
    const longitude = apparentSunLongitude(centuriesOf(2448908.5));
    expect(Math.abs(longitude - 360 * Math.floor(longitude / 360) - 199.90895)).toBeLessThan(0.0001);
  });
});

describe('one evening with every quantity held against Meeus and suncalc', () => {
  // 30 N, 31 E, sea level, 18 February 2026: the second evening after the conjunction of the 17th, 12:01 universal time.
  const place = samplePlace(30, 31, 'Africa/Cairo');
  const evening = searchAt(place, '2026-02-10T00:00', 'A').evenings[1];
  if (!evening?.sunsetMs || !evening.moonsetMs || !evening.bestMs) throw new Error('That evening has a crescent.');
  const { sunsetMs, moonsetMs, bestMs } = evening;
  const julianDay = bestMs / MS_PER_DAY + 2440587.5;
  // Delta T of 2026: 69 s (IERS, from memory); ten seconds more move the Moon by 0.0015 degree.
  const reference = skyOver(julianDay, 69, 30, 31);

  it('sunset and moonset', () => {
    expect(evening.date).toBe('2026-02-18');
    // suncalc states no accuracy; seen: 20 s on the Sun.
    const suncalcMs = getTimes(new Date('2026-02-18T10:00Z'), 30, 31).sunset?.getTime() ?? 0;
    expect(Math.abs(suncalcMs - sunsetMs)).toBeLessThan(60_000);
    const suncalcMoonsetMs = getMoonTimes(new Date('2026-02-18T00:00Z'), 30, 31).set?.getTime() ?? 0;
    // Tolerance of the tests of rise and set, see sky.test.ts; seen: 2 s.
    expect(Math.abs(suncalcMoonsetMs - moonsetMs)).toBeLessThan(20_000);
    // By Meeus, chapter 15: the Moon sets when its centre is at 0.7275 parallax - 34' (geocentric, without air).
    const atSet = skyOver(moonsetMs / MS_PER_DAY + 2440587.5, 69, 30, 31);
    // A minute of time is 0.22 degree of altitude here; 0.03 degree is the sum of both theories' errors.
    expect(Math.abs(atSet.moonAltitude - (0.7275 * atSet.parallax - 34 / 60))).toBeLessThan(0.03);
    const sunAtSet = skyOver(sunsetMs / MS_PER_DAY + 2440587.5, 69, 30, 31);
    expect(Math.abs(sunAtSet.sunAltitude + 50 / 60)).toBeLessThan(0.03);
    expect(bestMs).toBe(Math.round(sunsetMs + (4 * (moonsetMs - sunsetMs)) / 9));
  });

  it('altitudes, elongation and parallax at best time', () => {
    const seen = computeCrescentGeometry(place, bestMs);
    expect(Math.abs(seen.moonAltitudeDegrees - reference.moonAltitude)).toBeLessThan(0.02);
    expect(Math.abs(seen.sunAltitudeDegrees - reference.sunAltitude)).toBeLessThan(0.02);
    expect(Math.abs(seen.elongationDegrees - reference.elongation)).toBeLessThan(0.02);
    expect(Math.abs(seen.parallaxDegrees - reference.parallax)).toBeLessThan(0.0005);
    // suncalc's Moon: seen from the place and through air, so up to a degree lower for parallax and 0.1 higher for air.
    const suncalcAltitude = getMoonPosition(new Date(bestMs), 30, 31).altitude;
    const airless =
      seen.moonAltitudeDegrees - seen.parallaxDegrees * Math.cos((seen.moonAltitudeDegrees * Math.PI) / 180);
    expect(Math.abs(suncalcAltitude - airless)).toBeLessThan(0.3);
    // Parallax from suncalc's distance, elongation from its lit fraction: Sun, Earth and Moon make 180 degrees, and the
    // angle at the Sun is at most 0.15.
    const { distance } = getMoonPosition(new Date(bestMs), 30, 31);
    expect(Math.abs((Math.asin(6378.14 / distance) * 180) / Math.PI - seen.parallaxDegrees)).toBeLessThan(0.0005);
    const phaseAngle = (Math.acos(2 * getMoonIllumination(new Date(bestMs)).fraction - 1) * 180) / Math.PI;
    expect(Math.abs(180 - phaseAngle - seen.elongationDegrees)).toBeLessThan(0.15);
  });

  it('ARCV, ARCL, width, q and class', () => {
    const arcv = reference.moonAltitude - reference.sunAltitude;
    expect(Math.abs((evening.arcvDegrees ?? 0) - arcv)).toBeLessThan(0.02);
    expect(Math.abs((evening.arclDegrees ?? 0) - reference.elongation)).toBeLessThan(0.02);
    const radians = Math.PI / 180;
    const semiDiameter = 0.27245 * reference.parallax * 60;
    const lifted =
      semiDiameter * (1 + Math.sin(reference.moonAltitude * radians) * Math.sin(reference.parallax * radians));
    const width = lifted * (1 - Math.cos(reference.elongation * radians));
    expect(Math.abs((evening.widthArcminutes ?? 0) - width)).toBeLessThan(0.002);
    const q = (arcv - (11.8371 - 6.3226 * width + 0.7319 * width ** 2 - 0.1018 * width ** 3)) / 10;
    expect(Math.abs((evening.q ?? 0) - q)).toBeLessThan(0.003);
    expect(evening).toMatchObject({ class: 'A', seen: true });
  });
});

describe('findFirstCrescent', () => {
  it('begins with the first sunset after the conjunction and ends with the evening that reaches the class', () => {
    const { evenings, day, failure } = searchAt(samplePlace(30, 31, 'Africa/Cairo'), '2026-02-10T00:00');
    expect(evenings.map((each) => [each.date, each.class, each.seen])).toEqual([
      ['2026-02-17', 'F', false],
      ['2026-02-18', 'A', true],
    ]);
    expect([renderDay(day), failure]).toEqual(['2026-02-18', null]);
  });

  it('gives the same evening whatever the day begins with', () => {
    for (const place of [ESTUARY, samplePlace(48, 2, 'Europe/Paris'), samplePlace(-13.8, -171.8, 'Pacific/Apia')]) {
      for (const from of ['2026-02-10T00:00', '2026-09-05T00:00', '2011-12-20T00:00']) {
        const days = (['sunset', 'midnight', 'sunrise'] as const).map(
          (begins) => searchAt(place, from, 'B', begins).day,
        );
        expect(new Set(days).size).toBe(1);
      }
    }
  });

  it('comes no later for a class that is easier to reach', () => {
    for (let month = 0; month < 60; month += 1) {
      const from = `${2020 + Math.floor(month / 12)}-${String((month % 12) + 1).padStart(2, '0')}-01T00:00`;
      const days = (['A', 'B', 'C', 'D'] as const).map((visibility) => searchAt(ESTUARY, from, visibility).day ?? 0);
      expect([...days].sort((a, b) => b - a)).toEqual(days);
    }
  });

  it('ends without a day where the Sun does not set', () => {
    const { evenings, day, failure } = searchAt(samplePlace(69.65, 18.96, 'Europe/Oslo'), '2026-06-10T00:00');
    expect([day, failure, evenings.at(-1)?.sunsetMs, evenings.at(-1)?.class]).toEqual([
      null,
      'no-sunset',
      null,
      'none',
    ]);
  });

  it('says that the Sun does not rise in the polar night, and when it is the Moon that is down', () => {
    const night = searchAt(samplePlace(69.65, 18.96, 'Europe/Oslo'), '2026-12-01T00:00');
    expect([night.failure, night.evenings.at(-1)?.untested]).toEqual(['no-sunrise', 'no-sunrise']);
    const light = searchAt(samplePlace(69.65, 18.96, 'Europe/Oslo'), '2026-06-10T00:00');
    expect(light.evenings.at(-1)?.untested).toBe('no-sunset');
    // New Moon of 2026-09-11, 03:27 universal time: in the north the autumn Moon of that evening sets before the Sun.
    const [first] = searchAt(samplePlace(59.9, 10.7, 'Europe/Oslo'), '2026-09-05T00:00').evenings;
    expect(first).toMatchObject({ date: '2026-09-11', untested: 'moon-down', moonsetMs: null, class: 'none' });
  });

  it('ends without a day where no crescent reaches the class, or the Moon does not set', () => {
    const found = new Set<string | null>();
    const place = samplePlace(66, 0, 'UTC');
    const line = createNightLine('sunset', place);
    for (let lunation = 300; lunation < 350; lunation += 1) {
      const search = findFirstCrescent(line, lunations.phaseInstant(lunation, 'new-moon'), 'B');
      expect(search.day === null).toBe(search.failure !== null);
      expect(search.evenings.length).toBeLessThanOrEqual(5);
      if (search.failure === 'not-reached') expect(search.evenings.length).toBe(5);
      found.add(search.failure);
    }
    expect([...found].sort()).toEqual(['no-moonset', 'no-sunset', 'not-reached', null].sort());
  });

  it('looks on the evening of a day whose night has no conjunction yet', () => {
    // New Moon of 2026-02-17, 12:01 universal time, is after sunset at the estuary (20:06 there): first looked for on the 18th.
    const { evenings } = searchAt(ESTUARY, '2026-02-10T00:00');
    expect(evenings[0]?.date).toBe('2026-02-18');
    expect(
      (evenings[0]?.sunsetMs ?? 0) >=
        lunations.phaseInstant(lunations.firstFrom('new-moon', utc('2026-02-10T00:00')), 'new-moon'),
    ).toBe(true);
  });
});
