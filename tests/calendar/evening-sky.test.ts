import { getMoonPosition, getMoonTimes, getPosition, getTimes } from 'suncalc';
import { describe, expect, it } from 'vitest';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import { requireCivilZone } from '../../src/calendar/civil.ts';
import { renderCivilDate } from '../../src/calendar/day-number.ts';
import {
  computeEveningSky,
  type EveningSky,
  findCompassPoint,
  type MoonStand,
} from '../../src/calendar/evening-sky.ts';
import type { Place } from '../../src/calendar/rules.ts';
import { ESTUARY, samplePlace, sampleRules, utc } from './sample-rules.ts';

const DAY_MS = 86_400_000;
const DEGREE = Math.PI / 180;
const HOURS = { classBegins: '09:00', classEnds: '15:00', bedtime: '20:30' };

const PLACES: [string, Place][] = [
  ['41° south', { ...ESTUARY, elevationMetres: 0 }],
  ['48° north', samplePlace(48.2, 5.1, 'Europe/Paris')],
  ['the equator', samplePlace(0.3, 32.6, 'Africa/Kampala')],
  ['70° north', samplePlace(69.6, 18.9, 'Europe/Oslo')],
];

function* listSkies(place: Place, from: string, days: number, step = 1): Generator<EveningSky> {
  const almanac = createAlmanac(sampleRules(), place);
  const first = utc(`${from}T00:00`) / DAY_MS;
  for (let day = first; day < first + days; day += step) yield computeEveningSky(almanac, renderCivilDate(day), HOURS);
}

const skyAt = (place: Place, date: string, hours = HOURS) =>
  computeEveningSky(createAlmanac(sampleRules(), place), date, hours);

const clockAt = (place: Place, atMs: number | undefined) =>
  atMs === undefined ? undefined : requireCivilZone(place.timeZone).renderClock(atMs);

/** Degrees between two directions given by azimuth and altitude. */
function computeApart(
  one: { azimuth: number; altitude: number },
  other: { azimuth: number; altitude: number },
): number {
  const cosine =
    Math.sin(one.altitude * DEGREE) * Math.sin(other.altitude * DEGREE) +
    Math.cos(one.altitude * DEGREE) *
      Math.cos(other.altitude * DEGREE) *
      Math.cos((one.azimuth - other.azimuth) * DEGREE);
  return Math.acos(Math.min(1, Math.max(-1, cosine))) / DEGREE;
}

describe.each(PLACES)('the Moon at %s', (_, place) => {
  const { latitudeDegrees, longitudeDegrees } = place;
  const at = (atMs: number) => [new Date(atMs), latitudeDegrees, longitudeDegrees] as const;

  it('stands where suncalc says at dusk and at bedtime', () => {
    let [checked, dusks] = [0, 0];
    for (const { atDusk, atBedtime } of listSkies(place, '2026-01-01', 730, 5)) {
      for (const stand of [atDusk, atBedtime]) {
        if (stand === null) continue;
        const other = getMoonPosition(...at(stand.atMs));
        const sun = getPosition(...at(stand.atMs));
        // suncalc states 0.3 degrees for the Moon and refracts by another formula below the horizon.
        if (other.altitude > 1) {
          expect(Math.abs(stand.altitudeDegrees - other.altitude)).toBeLessThan(0.3);
          const turn = Math.abs(((stand.azimuthDegrees - other.azimuth + 540) % 360) - 180);
          // Azimuth grows coarse near the zenith.
          expect(turn * Math.cos(other.altitude * DEGREE)).toBeLessThan(0.3);
          checked += 1;
        }
        if (sun.altitude > 1) expect(Math.abs(stand.sunAltitudeDegrees - sun.altitude)).toBeLessThan(0.05);
        if (sun.altitude > 1 && other.altitude > 1) {
          expect(Math.abs(stand.fromSunDegrees - computeApart(sun, other))).toBeLessThan(0.3);
        }
        dusks += stand === atDusk ? 1 : 0;
      }
    }
    expect(checked).toBeGreaterThan(60);
    expect(dusks).toBeGreaterThan(60);
  });

  it('is pointed out only with the Sun down or a quarter of the sky away, by suncalc too', () => {
    const kinds = new Map<string, number>();
    const expectSafe = (kind: string, { atMs, altitudeDegrees, point }: MoonStand, needsDark: boolean) => {
      const [moon, sun] = [getMoonPosition(...at(atMs)), getPosition(...at(atMs))];
      expect(altitudeDegrees).toBeGreaterThanOrEqual(5);
      // Half a degree more, where the Moon stands between two points.
      expect(
        [-0.5, 0.5].map((aside) => findCompassPoint(moon.azimuth + aside / Math.cos(moon.altitude * DEGREE))),
      ).toContain(point);
      // Airless -6 degrees: suncalc lifts the Sun by up to 0.5 for the air even below the horizon. Its Moon is good to 0.3.
      if (needsDark) expect(sun.altitude, kind).toBeLessThan(-5.4);
      else expect(computeApart(sun, moon), kind).toBeGreaterThan(89.5);
    };
    for (const { evening, school } of listSkies(place, '2026-01-01', 730)) {
      kinds.set(evening.kind, (kinds.get(evening.kind) ?? 0) + 1);
      kinds.set(`school ${school.kind}`, (kinds.get(`school ${school.kind}`) ?? 0) + 1);
      if ('at' in evening) expectSafe(evening.kind, evening.at, evening.kind !== 'in-daylight');
      if (school.kind === 'up') expectSafe('school', school.at, false);
    }
    // Two years bring every case that can come at the place.
    for (const kind of ['after-dark', 'rising', 'later', 'school up', 'school near-sun', 'school down']) {
      expect(kinds.get(kind), kind).toBeGreaterThan(10);
    }
  });
});

describe('an evening at 41° south in winter', () => {
  it('ends its twilight when suncalc says', () => {
    for (const { date, duskMs } of listSkies(ESTUARY, '2026-06-01', 60, 7)) {
      const { dusk } = getTimes(new Date(utc(`${date}T00:00`)), ESTUARY.latitudeDegrees, ESTUARY.longitudeDegrees);
      // suncalc's Sun is good to half a minute here.
      expect(Math.abs((duskMs ?? 0) - (dusk?.getTime() ?? 0))).toBeLessThan(60_000);
    }
  });

  it('has a crescent to wait for, until the Sun is fully down', () => {
    const { evening, school } = skyAt(ESTUARY, '2026-07-17');
    expect(evening).toMatchObject({ kind: 'after-dark', nearSun: true });
    expect(school.kind).toBe('near-sun');
  });

  it('has a gibbous Moon that is up when it gets dark, and in the afternoon', () => {
    const { evening, school, atDusk, duskMs } = skyAt(ESTUARY, '2026-07-25');
    expect(evening).toMatchObject({ kind: 'after-dark', nearSun: false, at: atDusk });
    expect(clockAt(ESTUARY, duskMs ?? undefined)).toBe('17:51');
    expect(school).toMatchObject({ kind: 'up', at: { point: 'east' } });
    expect(clockAt(ESTUARY, school.kind === 'up' ? school.at.atMs : undefined)).toBe('15:00');
  });

  it('has a Moon that rises before bedtime, when suncalc says', () => {
    const { evening } = skyAt(ESTUARY, '2026-07-31');
    const { rise } = getMoonTimes(new Date(utc('2026-07-31T00:00')), ESTUARY.latitudeDegrees, ESTUARY.longitudeDegrees);
    expect(evening.kind).toBe('rising');
    // A minute and a half: suncalc's Moon is good to 0.3 degrees (seen: 21 s).
    if (evening.kind === 'rising') expect(Math.abs(evening.risesMs - (rise?.getTime() ?? 0))).toBeLessThan(90_000);
  });

  it('has a Moon that is too low until bedtime, and one that comes later', () => {
    const soon = skyAt(ESTUARY, '2026-08-01').evening;
    expect([soon.kind, clockAt(ESTUARY, soon.kind === 'later' ? soon.risesMs : undefined)]).toEqual(['later', '20:06']);
    const later = skyAt(ESTUARY, '2026-08-05').evening;
    expect([later.kind, clockAt(ESTUARY, later.kind === 'later' ? later.risesMs : undefined)]).toEqual([
      'later',
      '00:40',
    ]);
  });

  it('does not deny a full Moon that came up between sunset and dark and is low at bedtime', () => {
    const auckland = samplePlace(-36.85, 174.76, 'Pacific/Auckland');
    const { evening } = skyAt(auckland, '2026-03-04');
    expect([evening.kind, clockAt(auckland, evening.kind === 'later' ? evening.risesMs : undefined)]).toEqual([
      'later',
      '20:11',
    ]);
    for (const place of [auckland, ...PLACES.slice(0, 3).map(([, one]) => one)]) {
      for (const { date, evening, atBedtime } of listSkies(place, '2026-01-01', 730)) {
        if (evening.kind !== 'down' || atBedtime.altitudeDegrees <= 0) continue;
        expect(atBedtime.fromSunDegrees, date).toBeLessThan(90);
      }
    }
  });

  it('names no time for a Moon that comes up before the Sun, nor for a new Moon', () => {
    // New Moon was on 12 August, 17:37 UT.
    for (const date of ['2026-08-09', '2026-08-10', '2026-08-11', '2026-08-12', '2026-08-13']) {
      expect(skyAt(ESTUARY, date).evening.kind).toBe('down');
    }
  });
});

describe('a light evening', () => {
  const [north] = PLACES.filter(([name]) => name === '48° north').map(([, place]) => place);

  it('shows the Moon by daylight only when it is far from the Sun', () => {
    const kinds = Array.from({ length: 15 }, (_, index) => {
      const date = renderCivilDate(utc('2026-07-15T00:00') / DAY_MS + index);
      return north && skyAt(north, date).evening.kind;
    });
    expect(new Set(kinds)).toEqual(new Set(['too-light', 'in-daylight', 'later']));
    // First quarter was on 21 July, 11:06 UT: before it, the Moon is near the Sun.
    expect(kinds.slice(0, 6)).toEqual(Array.from({ length: 6 }, () => 'too-light'));
  });

  it('has a later bedtime that reaches the dark', () => {
    const evening = north && skyAt(north, '2026-07-22', { ...HOURS, bedtime: '23:00' }).evening;
    expect(evening?.kind).toBe('after-dark');
  });
});

describe('polar days and nights', () => {
  const place = samplePlace(69.6, 18.9, 'Europe/Oslo');

  it('never get dark in June', () => {
    const sky = skyAt(place, '2026-06-20');
    expect([sky.duskMs, sky.atDusk]).toEqual([null, null]);
    expect(['too-light', 'in-daylight', 'later']).toContain(sky.evening.kind);
  });

  it('begin the evening when school is over, where the Sun is down by then all day', () => {
    const sky = skyAt(place, '2026-12-20');
    expect(clockAt(place, sky.duskMs ?? undefined)).toBe('15:00');
    expect(sky.evening).toMatchObject({ kind: 'after-dark' });
  });

  it.each([
    ['Tromso', place],
    ['Longyearbyen', samplePlace(78.22, 15.65, 'Arctic/Longyearbyen')],
    ['Alert', samplePlace(82.5, -62.35, 'America/Toronto')],
    ['McMurdo', samplePlace(-77.85, 166.67, 'Antarctica/McMurdo')],
  ])('have a Moon at %s that is down only when it is, and low only when it is never well up', (_, polar) => {
    const seen = new Set<string>();
    for (const { date, evening, duskMs, bedtimeMs } of listSkies(polar, '2026-01-01', 365, 2)) {
      if (evening.kind !== 'down' && evening.kind !== 'low') continue;
      seen.add(evening.kind);
      for (let atMs = duskMs ?? bedtimeMs; atMs <= bedtimeMs; atMs += 1_200_000) {
        const { altitude } = getMoonPosition(new Date(atMs), polar.latitudeDegrees, polar.longitudeDegrees);
        // suncalc's Moon is good to 0.3 degrees, without the air, which lifts by 0.5 at the horizon and 0.2 at 5 degrees.
        expect(altitude, date).toBeLessThan(evening.kind === 'down' ? 0.3 : 5.3);
      }
    }
    expect(seen).toEqual(new Set(['down', 'low']));
  });

  it('have a Moon that circles low all evening, up and not to be looked for', () => {
    const sky = skyAt(place, '2026-10-04');
    expect(sky.evening).toEqual({ kind: 'low' });
    expect(sky.moonUp).toHaveLength(1);
    for (const stand of [sky.atDusk, sky.atBedtime]) expect(stand?.altitudeDegrees).toBeGreaterThan(2);
  });

  it('have a Moon that is well up between dusk and bedtime only', () => {
    const alert = samplePlace(82.5, -62.35, 'America/Toronto');
    const { evening, atDusk, atBedtime } = skyAt(alert, '2026-12-16');
    const at = evening.kind === 'after-dark' ? evening.at : undefined;
    expect(clockAt(alert, at?.atMs)).toBe('16:50');
    expect(at?.altitudeDegrees).toBeGreaterThan(5);
    for (const stand of [atDusk, atBedtime]) expect(stand?.altitudeDegrees).toBeLessThan(5);
  });

  it('begin the evening when school is over, where the Sun sets in school hours', () => {
    const early = skyAt(place, '2026-11-20');
    expect(clockAt(place, early.duskMs ?? undefined)).toBe('15:00');
    expect(early.evening).toMatchObject({ kind: 'after-dark', at: { atMs: early.duskMs } });
  });

  it('are dark only with the Sun fully down, also when it comes up for half a year before the evening', () => {
    for (const latitude of [90, -90]) {
      for (const { date, duskMs, atDusk } of listSkies(samplePlace(latitude, 0, 'UTC'), '2026-02-01', 300)) {
        if (duskMs === null) continue;
        expect(atDusk?.sunAltitudeDegrees, date).toBeLessThan(-5.3);
        expect(duskMs, date).toBeGreaterThanOrEqual(utc(`${date}T15:00`));
      }
    }
  });

  it('answer for every date at the pole', () => {
    const kinds = new Set<string>();
    for (const { evening } of listSkies(samplePlace(90, 0, 'UTC'), '2026-01-01', 365, 3)) kinds.add(evening.kind);
    expect(kinds.size).toBeGreaterThan(2);
  });
});

describe('findCompassPoint', () => {
  it('gives the nearest of eight', () => {
    const azimuths = [0, 22, 23, 90, 157, 180, 225, 270, 315, 337, 338, 360, -90, 720];
    expect(azimuths.map(findCompassPoint)).toEqual([
      'north',
      'north',
      'north-east',
      'east',
      'south-east',
      'south',
      'south-west',
      'west',
      'north-west',
      'north-west',
      'north',
      'north',
      'west',
      'north',
    ]);
  });
});
