import { readFileSync } from 'node:fs';
import { createAlmanac } from '../../../src/calendar/almanac.ts';
import type { Almanac } from '../../../src/calendar/almanac-types.ts';
import type { CivilDate, Place } from '../../../src/calendar/rules.ts';
import { addDays } from '../../../src/content/civil-date.ts';
import { createLabels, type Labels } from '../../../src/content/labels.ts';
import { parseCalendar } from '../../../src/content/parse-calendar.ts';
import { parseGestureSet } from '../../../src/content/parse-gesture-set.ts';
import { parseLabelFile } from '../../../src/content/parse-label-file.ts';
import type { Calendar, GestureSet, School } from '../../../src/content/types.ts';
import type { QuizFacts } from '../../../src/quiz/model.ts';

function readContent(path: string): { path: string; text: string } {
  return { path, text: readFileSync(new URL(`../../../content/${path}`, import.meta.url), 'utf8') };
}

function requireValue<Value>({ value, diagnostics }: { value?: Value | undefined; diagnostics: unknown }): Value {
  if (value === undefined) throw new Error(`A file of the demonstration is faulty: ${JSON.stringify(diagnostics)}`);
  return value;
}

/** The two demonstration calendars, and Estuary Nights by the first crescent from midnight to midnight. */
const ESTUARY = requireValue(parseCalendar(readContent('calendars/estuary.yaml')));
const CALENDARS = {
  estuary: ESTUARY,
  moulin: requireValue(parseCalendar(readContent('calendars/moulin.yaml'))),
  crescent: {
    ...ESTUARY,
    dayBegins: 'midnight',
    monthBegins: { at: 'first-crescent', offset: 0, visibility: 'B' },
  },
} as const satisfies Readonly<Record<string, Calendar>>;

export type CalendarName = keyof typeof CALENDARS;

const ESTUARY_GESTURES = requireValue(parseGestureSet(readContent('gestures/estuary.yaml')));
export const GESTURES: Readonly<Record<CalendarName, GestureSet>> = {
  estuary: ESTUARY_GESTURES,
  moulin: requireValue(parseGestureSet(readContent('gestures/moulin.yaml'))),
  crescent: ESTUARY_GESTURES,
};

export const FRENCH: Labels = createLabels('fr', requireValue(parseLabelFile(readContent('labels/fr.yaml'))));
export const ENGLISH: Labels = createLabels('en');

export function placeAt(latitudeDegrees: number, longitudeDegrees: number, timeZone: string): Place {
  return { latitudeDegrees, longitudeDegrees, elevationMetres: 10, timeZone };
}

/** The school of the demonstration, and places in both hemispheres, in the tropics and beyond the polar circles. */
export const PLACES = {
  saltgrass: placeAt(-41.1, 174.2, 'Pacific/Auckland'),
  ormevire: placeAt(48.2, 5.1, 'Europe/Paris'),
  equator: placeAt(-0.2, -78.5, 'America/Guayaquil'),
  tropics: placeAt(13.7, 100.5, 'Asia/Bangkok'),
  south: placeAt(-54.8, -68.3, 'America/Argentina/Ushuaia'),
  north: placeAt(69.6, 18.9, 'Europe/Oslo'),
} as const satisfies Readonly<Record<string, Place>>;

export interface SkyFacts {
  readonly calendar?: CalendarName;
  readonly place?: Place;
  readonly today: CivilDate;
  /** Dates asked about: from this many days before today to this many after. */
  readonly before?: number;
  readonly after?: number;
  readonly labels?: Labels;
  readonly school?: Partial<School>;
}

const almanacs = new Map<Calendar, Map<Place, Almanac>>();

/** One almanac for each calendar and place, which keeps what it has worked out. */
function findAlmanac(calendar: Calendar, place: Place): Almanac {
  const known = almanacs.get(calendar) ?? new Map<Place, Almanac>();
  const almanac = known.get(place) ?? createAlmanac(calendar, place);
  almanacs.set(calendar, known.set(place, almanac));
  return almanac;
}

/** Facts of a real sky. */
export function makeSkyFacts(wanted: SkyFacts): QuizFacts {
  const { calendar: name = 'estuary', place = PLACES.saltgrass, today, before = 2, after = 7 } = wanted;
  const calendar = CALENDARS[name];
  return {
    almanac: findAlmanac(calendar, place),
    calendar,
    gestures: GESTURES[name],
    school: { ...SCHOOL, place, ...wanted.school },
    labels: wanted.labels ?? ENGLISH,
    today,
    from: addDays(today, -before),
    to: addDays(today, after),
    toldDates: new Set(),
  };
}

const SCHOOL: School = {
  id: 'saltgrass-point',
  name: 'Saltgrass Point School',
  language: 'en-NZ',
  place: PLACES.saltgrass,
  calendar: 'estuary',
  gestures: 'estuary',
  classBegins: '09:00',
  classEnds: '15:00',
  bedtime: '20:30',
  terms: [],
  groups: [],
  home: true,
};
