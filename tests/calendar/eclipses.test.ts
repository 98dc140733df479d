import { NextLocalSolarEclipse, Observer, SearchLocalSolarEclipse } from 'astronomy-engine';
import { describe, expect, it } from 'vitest';
import { computeObscuration, type Eclipse, listEclipses } from '../../src/calendar/eclipses.ts';
import type { Place } from '../../src/calendar/rules.ts';
import { computeStand, findLunarEclipse, findPhase, findSolarEclipse } from '../../src/calendar/sky.ts';
import { ESPENAK_SOLAR_ECLIPSES, NASA_LUNAR_ECLIPSES } from '../reference/eclipses.ts';
import { ESTUARY, samplePlace, utc } from './sample-rules.ts';

const DAY_MS = 86_400_000;
const DEGREE = Math.PI / 180;

const readLines = (table: string) =>
  table
    .trim()
    .split('\n')
    .map((line) => line.split(' '));

const LUNAR = readLines(NASA_LUNAR_ECLIPSES).map(([at = '', kind = '', ...numbers]) => {
  const [magnitude = 0, partialMinutes = 0, totalMinutes = 0, ascension = 0, declination = 0] = numbers.map(Number);
  return { at, kind, magnitude, partialMinutes, totalMinutes, ascension, declination };
});

/**
 * The Moon's altitude at a place from the figures of the tables: sidereal time (Meeus, Astronomical Algorithms, formula
 * 12.4), hour angle, spherical triangle, then parallax.
 */
function computeTableAltitude(row: (typeof LUNAR)[number], { latitudeDegrees, longitudeDegrees }: Place): number {
  const days = utc(row.at) / DAY_MS + 2440587.5 - 2451545;
  const hourAngle = (280.46061837 + 360.98564736629 * days - row.ascension * 15 + longitudeDegrees) * DEGREE;
  const [latitude, declination] = [latitudeDegrees * DEGREE, row.declination * DEGREE];
  const sine =
    Math.sin(declination) * Math.sin(latitude) + Math.cos(declination) * Math.cos(hourAngle) * Math.cos(latitude);
  const altitude = Math.asin(sine);
  // The Moon's mean horizontal parallax is 0.95 degrees.
  return altitude / DEGREE - 0.95 * Math.cos(altitude);
}

/** The one eclipse seen from a place within half a day of an instant. */
function findSeenNear(place: Place, atMs: number): Eclipse | undefined {
  const found = listEclipses(place, atMs - DAY_MS / 2, atMs + DAY_MS / 2);
  expect(found.length).toBeLessThanOrEqual(1);
  return found[0];
}

const PLACES: Place[] = [
  ESTUARY,
  samplePlace(48.2, 5.1, 'Europe/Paris'),
  samplePlace(1.3, 103.8, 'Asia/Singapore'),
  samplePlace(40, -100, 'America/Chicago'),
];

describe('eclipses of the Moon', () => {
  it.each(LUNAR)('agree with the tables of NASA: $at $kind', (row) => {
    const fullMoonMs = findPhase('full-moon', utc(row.at) - DAY_MS, 2) ?? 0;
    const course = findLunarEclipse(fullMoonMs);
    expect(course?.kind).toBe({ T: 'total', P: 'partial', N: 'penumbral' }[row.kind]);
    if (course === null) return;
    // Rounded to the minute: 30 s; the tables of 2008 foresaw up to 8 s more of slowing Earth (seen: 33 s).
    expect(Math.abs(course.greatestMs - utc(row.at))).toBeLessThan(45_000);
    if (row.kind === 'N') return;
    // Half-lengths are rounded to the minute; a grazing total part feels a small difference of shadows (seen: 41 s).
    expect(Math.abs(course.endsMs - course.greatestMs - row.partialMinutes * 60_000)).toBeLessThan(60_000);
    expect(
      Math.abs((course.core?.untilMs ?? course.greatestMs) - course.greatestMs - row.totalMinutes * 60_000),
    ).toBeLessThan(60_000);
  });

  it.each(LUNAR.filter(({ kind }) => kind !== 'N'))('are as deep and stand as high as the tables say: $at', (row) => {
    let checked = 0;
    for (const place of PLACES) {
      const altitude = computeTableAltitude(row, place);
      const seen = findSeenNear(place, utc(row.at));
      // The Moon well up at the greatest: it must be seen, at that instant, as deep and as high.
      if (altitude < 5) {
        if (altitude < -35) expect(seen).toBeUndefined();
        continue;
      }
      checked += 1;
      expect(seen?.of).toBe('moon');
      expect(seen?.deepest.atMs).toBe(seen?.greatestMs);
      // The engine's shadow is a little larger or smaller than that of the tables: seen 0.006.
      expect(Math.abs((seen?.deepest.magnitude ?? 0) - row.magnitude)).toBeLessThan(0.01);
      // The instant is rounded to the minute (0.13 degrees), the place to 0.01 h (0.08) and 0.1 degree; the parallax is the
      // mean one (0.06), and refraction is left out (0.17 at 5 degrees).
      expect(Math.abs((seen?.deepest.altitudeDegrees ?? 0) - altitude)).toBeLessThan(0.5);
    }
    // The places lie around the Earth, so that it is night at one of them.
    expect(checked).toBeGreaterThan(0);
  });

  it('are cut where the Moon rises and sets', () => {
    // 28 August 2026 in the far north of Norway: the Moon sets during the partial part.
    const seen = findSeenNear(samplePlace(69.6, 18.9, 'Europe/Oslo'), utc('2026-08-28T04:13'));
    expect(seen?.seen.fromMs).toBe(seen?.beginsMs);
    expect(seen?.seen.untilMs).toBeLessThan(seen?.greatestMs ?? 0);
    expect(seen?.deepest.atMs).toBe(seen?.seen.untilMs);
    expect(seen?.deepest.magnitude).toBeLessThan(0.5);
  });
});

describe('what is seen of an eclipse of the Moon', () => {
  /** Every eclipse of the Moon in 60 years, where Sun and Moon pass each other on the horizon quickly and slowly. */
  const seen = [
    ...PLACES,
    samplePlace(66, 20, 'Europe/Stockholm'),
    samplePlace(-77.8, 166.7, 'Antarctica/McMurdo'),
  ].flatMap((place) =>
    listEclipses(place, utc('1990-01-01T00:00'), utc('2050-01-01T00:00')).flatMap((eclipse) =>
      eclipse.of === 'moon' ? [{ place, eclipse }] : [],
    ),
  );
  const altitudeOf = (body: 'sun' | 'moon', place: Place, atMs: number) =>
    computeStand(body, place, atMs).altitudeDegrees;

  it('has the Sun wholly down and some of the Moon up, from first to last', () => {
    expect(seen.length).toBeGreaterThan(400);
    for (const { place, eclipse } of seen) {
      for (const atMs of [eclipse.seen.fromMs, eclipse.deepest.atMs, eclipse.seen.untilMs]) {
        // The upper limb on the horizon puts the centre a quarter of a degree below it; 0.05 for refraction at the place.
        expect(altitudeOf('sun', place, atMs)).toBeLessThan(-0.2);
        expect(altitudeOf('moon', place, atMs)).toBeGreaterThan(-0.35);
      }
    }
  });

  it('begins at sunset where the Moon rises before it, and ends at sunrise where it sets after', () => {
    const isCutBySun = (atMs: number, place: Place) => Math.abs(altitudeOf('sun', place, atMs) + 0.27) < 0.05;
    const cuts = seen.map(({ place, eclipse }) => ({
      atSunset: isCutBySun(eclipse.seen.fromMs, place) && eclipse.seen.fromMs > eclipse.beginsMs,
      atSunrise: isCutBySun(eclipse.seen.untilMs, place) && eclipse.seen.untilMs < eclipse.endsMs,
    }));
    expect(cuts.some(({ atSunset }) => atSunset)).toBe(true);
    expect(cuts.some(({ atSunrise }) => atSunrise)).toBe(true);
  });
});

describe('eclipses of the Sun', () => {
  const rows = readLines(ESPENAK_SOLAR_ECLIPSES).map(([latitude, longitude, kind, ...rest]) => {
    const events = [0, 2, 4, 6, 8].map((index) => ({ at: rest[index] ?? '-', altitude: Number(rest[index + 1]) }));
    return { place: samplePlace(Number(latitude), Number(longitude), 'UTC'), kind, events, day: rest[0] ?? '' };
  });

  it.each(rows)('agree with the tables of Espenak: $day at $place.latitudeDegrees', ({ place, kind, events }) => {
    const [begins, coreFrom, greatest, coreUntil, ends] = events;
    const newMoonMs = findPhase('new-moon', utc(greatest?.at ?? '') - DAY_MS, 2) ?? 0;
    const course = findSolarEclipse(place, newMoonMs);
    expect(course?.kind).toBe(kind);
    const pairs = [
      [begins, course?.beginsMs],
      [coreFrom, course?.core?.fromMs],
      [greatest, course?.greatestMs],
      [coreUntil, course?.core?.untilMs],
      [ends, course?.endsMs],
    ] as const;
    for (const [event, atMs] of pairs) {
      if (event?.at === '-') expect(atMs).toBeUndefined();
      // The length of the Earth's day was foreseen, the Moon's radius is another for the core, and its limb is no circle.
      else expect(Math.abs((atMs ?? 0) - utc(event?.at ?? ''))).toBeLessThan(20_000);
    }
    const seen = findSeenNear(place, utc(greatest?.at ?? ''));
    // Some altitudes are rounded to whole degrees; ours are refracted, which near the horizon adds up to half a degree.
    expect(Math.abs((seen?.deepest.altitudeDegrees ?? 0) - (greatest?.altitude ?? 0))).toBeLessThan(0.6);
    expect(seen?.seen.fromMs).toBe(course?.beginsMs);
    if ((ends?.altitude ?? 0) < -1) expect(seen?.seen.untilMs).toBeLessThan(course?.endsMs ?? 0);
    else expect(seen?.seen.untilMs).toBe(course?.endsMs);
  });

  it('is as deep as remembered at London in 1999', () => {
    // From memory, not looked up: partial at London on 1999-08-11, greatest at 10:20 UT, magnitude 0.968.
    const seen = findSeenNear(samplePlace(51.5, -0.1, 'Europe/London'), utc('1999-08-11T10:20'));
    expect(seen).toMatchObject({ of: 'sun', kind: 'partial' });
    expect(Math.abs((seen?.greatestMs ?? 0) - utc('1999-08-11T10:20'))).toBeLessThan(90_000);
    expect(Math.abs((seen?.deepest.magnitude ?? 0) - 0.968)).toBeLessThan(0.005);
  });

  it('are total where the Moon looks larger, annular where it looks smaller', () => {
    const total = findSeenNear(samplePlace(41.0341, -83.6523, 'UTC'), utc('2024-04-08T19:12'));
    expect(total?.deepest.magnitude).toBeGreaterThan(1);
    expect(total?.deepest.obscuration).toBe(1);
    const ring = findSeenNear(samplePlace(-48.2051, -70.6549, 'UTC'), utc('2024-10-02T20:25'));
    expect(ring?.deepest.magnitude).toBeLessThan(1);
    expect(ring?.deepest.obscuration).toBeCloseTo((ring?.deepest.magnitude ?? 0) ** 2, 6);
  });

  it.each(PLACES)('are those that the engine comes upon year after year at $latitudeDegrees', (place) => {
    // The engine goes from each to the next, and leaves out those of which neither end is up; ours are asked for one by one.
    const { latitudeDegrees, longitudeDegrees, elevationMetres } = place;
    const observer = new Observer(latitudeDegrees, longitudeDegrees, elevationMetres);
    const found: number[] = [];
    let next = SearchLocalSolarEclipse(new Date(utc('1950-01-01T00:00')), observer);
    while (next.peak.time.date.getTime() < utc('2050-01-01T00:00')) {
      found.push(Math.round(next.peak.time.date.getTime() / 1000));
      next = NextLocalSolarEclipse(next.peak.time, observer);
    }
    const listed = listEclipses(place, utc('1950-01-01T00:00'), utc('2050-01-01T00:00'))
      .filter(({ of }) => of === 'sun')
      .map(({ greatestMs }) => Math.round(greatestMs / 1000));
    expect(found.length).toBeGreaterThan(25);
    expect(listed.length).toBe(found.length);
    for (const [index, seconds] of listed.entries()) expect(Math.abs(seconds - (found[index] ?? 0))).toBeLessThan(2);
  });

  it('are none where the shadow does not fall, or at night', () => {
    expect(findSeenNear(ESTUARY, utc('2024-04-08T19:12'))).toBeUndefined();
    expect(findSeenNear(ESTUARY, utc('2026-08-12T17:46'))).toBeUndefined();
  });
});

describe('listEclipses', () => {
  it('gives them in order, each in the stretch that holds some of it', () => {
    const [fromMs, untilMs] = [utc('2026-01-01T00:00'), utc('2029-01-01T00:00')];
    const found = listEclipses(ESTUARY, fromMs, untilMs);
    expect(found.map(({ of, kind }) => `${of} ${kind}`)).toEqual([
      'moon total',
      'moon penumbral',
      'moon penumbral',
      'moon partial',
      'sun partial',
      'moon total',
    ]);
    for (const eclipse of found) {
      expect(eclipse.seen.fromMs).toBeLessThan(eclipse.seen.untilMs);
      // Each is found in every stretch it reaches into, and in no other.
      const { fromMs: seenFrom, untilMs: seenUntil } = eclipse.seen;
      expect(listEclipses(ESTUARY, seenUntil - 1000, seenUntil + DAY_MS)).toEqual([eclipse]);
      expect(listEclipses(ESTUARY, seenFrom - DAY_MS, seenFrom + 1000)).toEqual([eclipse]);
      expect(listEclipses(ESTUARY, seenUntil, seenUntil + DAY_MS)).toEqual([]);
      expect(listEclipses(ESTUARY, seenFrom - DAY_MS, seenFrom)).toEqual([]);
    }
  });
});

describe('computeObscuration', () => {
  it('is 0 for discs apart, the ratio of areas for one within the other, and 1 for one covered', () => {
    expect(computeObscuration({ radius: 1, coverRadius: 1, apart: 2 })).toBe(0);
    expect(computeObscuration({ radius: 2, coverRadius: 1, apart: 0.5 })).toBe(0.25);
    expect(computeObscuration({ radius: 1, coverRadius: 2, apart: 0.5 })).toBe(1);
  });

  it('agrees with the known lens of two equal circles through each other’s centres', () => {
    // Area 2π/3 − √3/2 for radius 1: school geometry.
    const lens = (2 * Math.PI) / 3 - Math.sqrt(3) / 2;
    expect(computeObscuration({ radius: 1, coverRadius: 1, apart: 1 })).toBeCloseTo(lens / Math.PI, 12);
  });

  it('counts as many points as lie under both discs', () => {
    const discs = { radius: 1, coverRadius: 1.7, apart: 1.4 };
    let [inside, covered] = [0, 0];
    for (let x = -1; x <= 1; x += 0.004) {
      for (let y = -1; y <= 1; y += 0.004) {
        if (x * x + y * y > 1) continue;
        inside += 1;
        if ((x - discs.apart) ** 2 + y * y <= discs.coverRadius ** 2) covered += 1;
      }
    }
    expect(computeObscuration(discs)).toBeCloseTo(covered / inside, 3);
  });
});
