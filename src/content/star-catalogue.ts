import type { Star } from '../calendar/rules.ts';

/**
 * Stars by which calendars tell the year, at the epoch and equinox J2000: hours and minutes of right ascension, degrees
 * and minutes of declination. From memory of the standard catalogues of bright stars (as in the Bright Star Catalogue and
 * HIPPARCOS), to the minute of arc or better; a minute of arc moves a rising by well under an hour. Proper motion is left
 * out. The names are those of the IAU's list.
 */
const STARS: readonly (readonly [name: string, hours: number, minutes: number, degrees: number, arcMinutes: number])[] =
  [
    ['Achernar', 1, 37.71, -57, 14.2],
    ['Alcyone', 3, 47.49, 24, 6.3],
    ['Aldebaran', 4, 35.92, 16, 30.6],
    ['Altair', 19, 50.78, 8, 52.1],
    ['Antares', 16, 29.41, -26, 25.9],
    ['Arcturus', 14, 15.66, 19, 10.9],
    ['Betelgeuse', 5, 55.17, 7, 24.4],
    ['Canopus', 6, 23.95, -52, 41.7],
    ['Capella', 5, 16.69, 45, 59.9],
    ['Fomalhaut', 22, 57.65, -29, 37.3],
    ['Pollux', 7, 45.32, 28, 1.6],
    ['Procyon', 7, 39.3, 5, 13.5],
    ['Regulus', 10, 8.37, 11, 58],
    ['Rigel', 5, 14.54, -8, 12.1],
    ['Sirius', 6, 45.15, -16, 43],
    ['Spica', 13, 25.19, -11, 9.7],
    ['Vega', 18, 36.94, 38, 47],
  ];

/** The names of the stars that a calendar can name without saying where they are. */
export const STAR_NAMES: readonly string[] = STARS.map(([name]) => name);

/** The star of a name, or nothing for one that is not in the catalogue. */
export function findStar(name: string): Star | undefined {
  const found = STARS.find(([known]) => known === name);
  if (found === undefined) return undefined;
  const [, hours, minutes, degrees, arcMinutes] = found;
  // Of a southern star the minutes count southward too.
  const declinationDegrees = degrees + (Math.sign(degrees) * arcMinutes) / 60;
  return { name, rightAscensionHours: hours + minutes / 60, declinationDegrees };
}
