import { dayNumberOf, MS_PER_DAY } from '../../src/calendar/day-number.ts';
import type { CalendarRules, NamedNight, Place } from '../../src/calendar/rules.ts';

function numbered(word: string, count: number): NamedNight[] {
  return Array.from({ length: count }, (_, index) => ({ name: `${word} ${index + 1}` }));
}

/** The design's example school: an invented estuary school. */
export const ESTUARY: Place = {
  latitudeDegrees: -41.1,
  longitudeDegrees: 174.2,
  elevationMetres: 10,
  timeZone: 'Pacific/Auckland',
};

/** A place at sea level. */
export function samplePlace(latitudeDegrees: number, longitudeDegrees: number, timeZone: string): Place {
  return { latitudeDegrees, longitudeDegrees, elevationMetres: 0, timeZone };
}

/** Rules with placeholder names: thirty nights, of which the 16th is Round Moon in High Water, and twelve months. */
export function sampleRules(changes: Partial<CalendarRules> = {}): CalendarRules {
  const nights = numbered('Night', 30);
  nights[15] = { name: 'Round Moon', gesture: 'full-circle' };
  const months = numbered('Month', 12);
  months[1] = { name: 'Frost Month' };
  return {
    dayBegins: 'sunset',
    monthBegins: { at: 'conjunction', offset: 0 },
    groups: [
      { name: 'Dark Water', nights: nights.slice(0, 12) },
      { name: 'High Water', nights: nights.slice(12) },
    ],
    months,
    yearBegins: { phase: 'full-moon', onOrAfter: { kind: 'solstice', month: 'june' } },
    observations: [],
    announcedMonths: [],
    ...changes,
  };
}

/** Thirty names in one group, `N1` to `N30`, with something added to some of them by their number. */
export function groupsWith(changes: Readonly<Record<number, object>>): CalendarRules['groups'] {
  const nights = Array.from({ length: 30 }, (_, index) => ({ name: `N${index + 1}`, ...changes[index + 1] }));
  return [{ name: 'All', nights }];
}

/** Milliseconds of `YYYY-MM-DDTHH:MM` or `YYYY-MM-DDTHH:MM:SS`, universal time. */
export function utc(text: string): number {
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = text.split(/[-T:Z]/).map(Number);
  return dayNumberOf(year, month, day) * MS_PER_DAY + ((hour * 60 + minute) * 60 + second) * 1000;
}
