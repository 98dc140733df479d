import type { Place } from '../../../src/calendar/rules.ts';
import { addDays } from '../../../src/content/civil-date.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';
import { type CalendarName, makeSkyFacts, placeAt } from './sky-facts.ts';

/** Places of schools in both hemispheres, in the tropics, and where the Sun and the Moon may stay down or up. */
const SCHOOL_PLACES: readonly Place[] = [
  placeAt(-41.1, 174.2, 'Pacific/Auckland'),
  placeAt(48.2, 5.1, 'Europe/Paris'),
  placeAt(-16.5, -68.1, 'America/La_Paz'),
  placeAt(2.1, 45.3, 'Africa/Mogadishu'),
  placeAt(21.3, -157.9, 'Pacific/Honolulu'),
  placeAt(-54.8, -68.3, 'America/Argentina/Ushuaia'),
  placeAt(60.2, 24.9, 'Europe/Helsinki'),
  placeAt(69.6, 18.9, 'Europe/Oslo'),
];

const CALENDAR_NAMES: readonly CalendarName[] = ['estuary', 'moulin', 'crescent'];

/** A run of numbers from 0 to below 1, the same each time: a linear congruence modulo 2^32 (Numerical Recipes, from memory). */
function createNumbers(seed: number): () => number {
  // Neighbouring seeds begin far from each other.
  let state = Math.imul(seed, 2_654_435_761) >>> 0;
  return () => {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    return state / 2 ** 32;
  };
}

/** Days from 1950-01-01 to 2049-12-31. */
const DAYS = 36_525;

/**
 * So many weeks of random dates from 1950 to 2050, in turn with each calendar and at each place: five days with the lesson
 * in the middle, or more.
 */
export function* listSkyWeeks(count: number, seed: number, days = 5): Generator<QuizFacts> {
  const draw = createNumbers(seed);
  for (let week = 0; week < count; week++) {
    const today = addDays('1950-01-01', Math.floor(draw() * DAYS));
    const calendar = CALENDAR_NAMES[week % CALENDAR_NAMES.length];
    const place = SCHOOL_PLACES[Math.floor(week / CALENDAR_NAMES.length) % SCHOOL_PLACES.length];
    if (calendar === undefined || place === undefined)
      throw new Error('There is a calendar and a place for each week.');
    yield makeSkyFacts({ calendar, place, today, before: 2, after: days - 3 });
  }
}

/** Some of many, chosen by the same numbers; fewer where there are not so many. */
export function sampleSome<Item>(items: readonly Item[], count: number, seed: number): Item[] {
  const draw = createNumbers(seed);
  const left = [...items];
  const chosen: Item[] = [];
  while (chosen.length < count && left.length > 0) chosen.push(...left.splice(Math.floor(draw() * left.length), 1));
  return chosen;
}
