import { describe, expect, it } from 'vitest';
import { findStar, STAR_NAMES } from '../../src/content/star-catalogue.ts';

describe('the catalogue of stars', () => {
  // To the second of time and ten arc seconds, from memory of the Bright Star Catalogue: a second writing, against slips.
  it.each([
    ['Alcyone', '03:47:29', '+24:06:18'],
    ['Rigel', '05:14:32', '-08:12:06'],
    ['Sirius', '06:45:09', '-16:42:58'],
    ['Antares', '16:29:24', '-26:25:55'],
    ['Canopus', '06:23:57', '-52:41:44'],
    ['Vega', '18:36:56', '+38:47:01'],
    ['Spica', '13:25:12', '-11:09:41'],
    ['Arcturus', '14:15:40', '+19:10:57'],
    ['Aldebaran', '04:35:55', '+16:30:33'],
  ])('puts %s where it is', (name, rightAscension, declination) => {
    const [hours = 0, minutes = 0, seconds = 0] = rightAscension.split(':').map(Number);
    const [degrees = 0, arcMinutes = 0, arcSeconds = 0] = declination.slice(1).split(':').map(Number);
    const sign = declination.startsWith('-') ? -1 : 1;
    const star = findStar(name);
    expect(Math.abs((star?.rightAscensionHours ?? 0) - (hours + minutes / 60 + seconds / 3600))).toBeLessThan(1 / 3600);
    const expected = sign * (degrees + arcMinutes / 60 + arcSeconds / 3600);
    expect(Math.abs((star?.declinationDegrees ?? 0) - expected)).toBeLessThan(10 / 3600);
  });

  it('has places in range, names in order, and nothing for other names', () => {
    for (const name of STAR_NAMES) {
      const { rightAscensionHours = -1, declinationDegrees = 99 } = findStar(name) ?? {};
      expect(rightAscensionHours >= 0 && rightAscensionHours < 24 && Math.abs(declinationDegrees) < 90).toBe(true);
    }
    expect([...STAR_NAMES].sort()).toEqual(STAR_NAMES);
    expect(findStar('alcyone')).toBeUndefined();
  });
});
