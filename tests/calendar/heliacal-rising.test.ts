import { describe, expect, it } from 'vitest';
import { computeDateParts, MS_PER_DAY, renderCivilDate } from '../../src/calendar/day-number.ts';
import { createRisings, type RisingMarker } from '../../src/calendar/heliacal-rising.ts';
import type { Place } from '../../src/calendar/rules.ts';
import { computeStarAltitude } from '../../src/calendar/sky.ts';
import { findStar } from '../../src/content/star-catalogue.ts';
import { altitudeOf, centuriesOf, precess, refractionAt, skyOver } from '../reference/meeus-sky.ts';
import { samplePlace } from './sample-rules.ts';

const COOK_STRAIT = samplePlace(-41, 174, 'Pacific/Auckland');

function markerOf(name: string, starAltitudeDegrees = 5, sunAltitudeDegrees = -14): RisingMarker {
  const star = findStar(name);
  if (!star) throw new Error(`${name} is not in the catalogue.`);
  return { kind: 'rising', star, starAltitudeDegrees, sunAltitudeDegrees };
}

/** The date of the morning by the mean Sun of the place. */
function morningDate(atMs: number, { longitudeDegrees }: Place): string {
  return renderCivilDate(Math.floor(atMs / MS_PER_DAY + longitudeDegrees / 360));
}

describe('computeStarAltitude', () => {
  it.each([
    ['Alcyone', 2026.46, -41, 174],
    ['Canopus', 1850.3, 30, 31],
    ['Vega', 2150.9, 52, 5],
  ])('agrees with Meeus on %s in %d', (name, year, latitude, longitude) => {
    const { star } = markerOf(name);
    for (let hour = 0; hour < 24; hour += 1) {
      const julianDay = 2451545 + (year - 2000) * 365.25 + hour / 24;
      const point = precess(star.rightAscensionHours * 15, star.declinationDegrees, centuriesOf(julianDay));
      const altitude = altitudeOf(point, julianDay, latitude, longitude);
      if (altitude < 2) continue;
      const place = samplePlace(latitude, longitude, 'UTC');
      const found = computeStarAltitude(place, star, (julianDay - 2440587.5) * MS_PER_DAY);
      // Nutation of the star (17 arc seconds) is left out there, and refraction differs by some arc seconds.
      expect(Math.abs(found - altitude - refractionAt(altitude))).toBeLessThan(0.015);
    }
  });
});

describe('createRisings', () => {
  it('brings the Pleiades back before dawn in the second half of June at 41 S', () => {
    // Rule of thumb (common practice, no source); by the altitudes of the design, 5 degrees with the Sun at -14.
    const risingOf = createRisings(markerOf('Alcyone'), COOK_STRAIT);
    for (const year of [1900, 1950, 2000, 2026, 2050, 2100]) {
      const date = morningDate(risingOf(year).morning.atMs, COOK_STRAIT);
      expect(date >= `${year}-06-16` && date <= `${year}-06-30`, date).toBe(true);
    }
  });

  it('takes the first morning that counts, and the morning before does not', () => {
    for (const name of ['Alcyone', 'Rigel', 'Sirius', 'Antares', 'Vega', 'Spica', 'Arcturus', 'Aldebaran']) {
      const risingOf = createRisings(markerOf(name, 5, -10), COOK_STRAIT);
      for (const year of [1800, 1999, 2026, 2200]) {
        const { morning, morningBefore } = risingOf(year);
        expect(morning.starAltitudeDegrees).toBeGreaterThanOrEqual(5);
        expect(morningBefore?.starAltitudeDegrees).toBeLessThan(5);
        expect(Math.abs(morning.atMs - (morningBefore?.atMs ?? 0) - MS_PER_DAY)).toBeLessThan(10 * 60_000);
        // The Sun is where the marker wants it: by Meeus, delta T left out (a minute moves the Sun by 0.0007 degree).
        const sun = skyOver(morning.atMs / MS_PER_DAY + 2440587.5, 0, -41, 174).sunAltitude;
        expect(Math.abs(sun + 10)).toBeLessThan(0.03);
      }
    }
  });

  it('comes once a year, 365 or 366 days after the last, also about New Year', () => {
    // Antares at 48 N and Arcturus at 41 S come back about New Year, so that the morning may lie in the next year.
    for (const [name, place] of [
      ['Antares', samplePlace(48, 0, 'UTC')],
      ['Arcturus', COOK_STRAIT],
      ['Alcyone', samplePlace(60, 0, 'UTC')],
    ] as const) {
      const risingOf = createRisings(markerOf(name, 5, -10), place);
      let before = risingOf(1990).morning.atMs;
      for (let year = 1991; year <= 2040; year += 1) {
        const { atMs } = risingOf(year).morning;
        expect([365, 366]).toContain(Math.round((atMs - before) / MS_PER_DAY));
        expect(Math.abs(computeDateParts(Math.floor(atMs / MS_PER_DAY)).year - year)).toBeLessThanOrEqual(1);
        before = atMs;
      }
    }
  });

  it.each([
    ['Capella', COOK_STRAIT, 'never 5 degrees high'],
    ['Achernar', COOK_STRAIT, 'never away'],
    ['Vega', samplePlace(60, 0, 'UTC'), 'never away'],
    ['Fomalhaut', samplePlace(55, 0, 'UTC'), 'not seen to come back in 1800'],
  ])('refuses a star that does not come back: %s', (name, place, why) => {
    const risingOf = createRisings(markerOf(name, 5, -10), place);
    expect(() => risingOf(1800)).toThrow(RangeError);
    expect(() => risingOf(1800)).toThrow(why);
  });

  it('refuses the poles, where no morning follows another', () => {
    expect(() => createRisings(markerOf('Sirius', 5, -10), samplePlace(90, 0, 'UTC'))(2026)).toThrow('Sirius');
  });
});
