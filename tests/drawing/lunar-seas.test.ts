import { describe, expect, it } from 'vitest';
import { type LunarPlace, lunarSeas, youngCraters } from '../../src/drawing/lunar-seas.ts';
import { areaOf, centroidOf, type Polygon } from './flatten-path.ts';

/**
 * Centre (degrees east, degrees north) and diameter (km): IAU Gazetteer of Planetary Nomenclature, values from memory.
 * Margins: shores are drawn by hand, and a diameter there is the longest way across, so 4 degrees and a third.
 * Oceanus Procellarum, as drawn, holds Mare Insularum and Mare Cognitum, which move its middle east: 12 degrees.
 */
const gazetteer: Readonly<Record<string, { centre: LunarPlace; diameterKm: number; marginDegrees: number }>> = {
  'Mare Crisium': { centre: [59.1, 16.2], diameterKm: 556, marginDegrees: 4 },
  'Mare Serenitatis': { centre: [18.4, 27.3], diameterKm: 674, marginDegrees: 4 },
  'Mare Tranquillitatis': { centre: [30.8, 8.4], diameterKm: 876, marginDegrees: 4 },
  'Mare Nectaris': { centre: [34.6, -15.2], diameterKm: 339, marginDegrees: 4 },
  'Mare Fecunditatis': { centre: [53.7, -7.8], diameterKm: 840, marginDegrees: 4 },
  'Mare Vaporum': { centre: [4.1, 13.2], diameterKm: 242, marginDegrees: 4 },
  'Sinus Aestuum': { centre: [-8.3, 12.1], diameterKm: 317, marginDegrees: 4 },
  'Mare Imbrium': { centre: [-14.9, 34.7], diameterKm: 1146, marginDegrees: 4 },
  'Oceanus Procellarum': { centre: [-56.7, 20.7], diameterKm: 2592, marginDegrees: 12 },
  'Mare Nubium': { centre: [-17.3, -20.6], diameterKm: 714, marginDegrees: 4 },
  'Mare Humorum': { centre: [-38.6, -24.5], diameterKm: 420, marginDegrees: 4 },
  'Mare Frigoris': { centre: [0, 57.6], diameterKm: 1446, marginDegrees: 4 },
  Grimaldi: { centre: [-68.4, -5.4], diameterKm: 173, marginDegrees: 4 },
};

const craters: Readonly<Record<string, LunarPlace>> = {
  Copernicus: [-20.1, 9.6],
  Kepler: [-38, 8.1],
  Aristarchus: [-47.5, 23.7],
  Tycho: [-11.2, -43.3],
};

/** Kilometres of a degree on the Moon: its radius is 1737.4 km (IAU, from memory). */
const kmPerDegree = (Math.PI * 1737.4) / 180;

const toUnit = ([longitude, latitude]: LunarPlace): [number, number, number] => {
  const [lon, lat] = [(longitude * Math.PI) / 180, (latitude * Math.PI) / 180];
  return [Math.cos(lat) * Math.cos(lon), Math.cos(lat) * Math.sin(lon), Math.sin(lat)];
};

const separationDegrees = (one: LunarPlace, other: LunarPlace): number => {
  const [a, b] = [toUnit(one), toUnit(other)];
  return (Math.acos(Math.min(1, a[0] * b[0] + a[1] * b[1] + a[2] * b[2])) * 180) / Math.PI;
};

/** Flat map around the sea's own latitude; y up, so clockwise has a negative area. */
const flatten = (shore: readonly LunarPlace[], stretch: number): Polygon =>
  shore.map(([longitude, latitude]) => [longitude * stretch, latitude]);

describe('lunarSeas', () => {
  it('holds each sea of the table once', () => {
    expect(lunarSeas.map((sea) => sea.name).sort()).toEqual(Object.keys(gazetteer).sort());
  });

  it.each(lunarSeas.map((sea) => [sea.name, sea] as const))('%s lies where the gazetteer has it', (name, sea) => {
    const known = gazetteer[name];
    if (known === undefined) throw new Error(`no values for ${name}`);
    const stretch = Math.cos((known.centre[1] * Math.PI) / 180);
    const map = flatten(sea.shore, stretch);
    const [x, y] = centroidOf(map);
    expect(separationDegrees([x / stretch, y], known.centre)).toBeLessThan(known.marginDegrees);
    expect(areaOf(map)).toBeLessThan(0);
    const extents = sea.shore.flatMap((one) => sea.shore.map((other) => separationDegrees(one, other)));
    const extentKm = Math.max(...extents) * kmPerDegree;
    expect(extentKm / known.diameterKm).toBeGreaterThan(2 / 3);
    expect(extentKm / known.diameterKm).toBeLessThan(4 / 3);
  });
});

describe('youngCraters', () => {
  it.each(youngCraters.map((crater) => [crater.name, crater] as const))('%s is in its place', (name, crater) => {
    const known = craters[name];
    if (known === undefined) throw new Error(`no values for ${name}`);
    expect(separationDegrees(crater.place, known)).toBeLessThan(0.5);
  });
});
