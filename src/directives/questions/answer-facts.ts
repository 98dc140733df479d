import type { NightRecord } from '../../calendar/almanac-types.ts';
import { findNightAfter } from '../../quiz/questions/neighbours.ts';
import type { ResolveContext } from '../definition.ts';
import { type CalendarFact, makeNameFact, makeNumberFact } from './calendar-fact.ts';
import { makeLitSideFact } from './lit-side-fact.ts';

/** What facts are computed from. */
export type FactSetting = Pick<ResolveContext, 'almanac' | 'calendar' | 'labels' | 'lesson'>;

export function tellNight({ date, night }: NightRecord, { almanac }: FactSetting): CalendarFact {
  return makeNameFact(
    date,
    night.name,
    almanac.run.map(({ name }) => name),
  );
}

/** Which night of its month it is. */
export function tellNumber({ date, nightOfMonth }: NightRecord): CalendarFact {
  return makeNumberFact(date, nightOfMonth);
}

export function tellMonth({ date, month }: NightRecord, { calendar }: FactSetting): CalendarFact {
  const { months, thirteenthMonth } = calendar;
  const names = [...months, ...(thirteenthMonth === undefined ? [] : [thirteenthMonth])].map(({ name }) => name);
  return makeNameFact(date, month.name, names);
}

export function tellGroup({ date, night }: NightRecord, { calendar }: FactSetting): CalendarFact {
  return makeNameFact(
    date,
    night.group,
    calendar.groups.map(({ name }) => name),
  );
}

/** What is there instead for a dark or a full Moon. */
export function tellLitSide(record: NightRecord, { almanac, labels }: FactSetting): CalendarFact | string {
  const fact = makeLitSideFact(record.date, almanac.moonBestSeen(record), labels);
  return fact ?? `a dark or full Moon on \`${record.date}\`, no side of which is lit more than another,`;
}

/** Longer than any class counts on, and longer than any name stays away but the rarest: more than three months. */
const MOST_NIGHTS_AHEAD = 100;

/** Nights from that of the lesson's date to the next of a name; what is there instead where none is near. */
export function tellNightsUntil(name: string, { almanac, lesson }: FactSetting): CalendarFact | string {
  let night: NightRecord | undefined = almanac.nightOn(lesson.date);
  for (let count = 1; count <= MOST_NIGHTS_AHEAD; count++) {
    night = findNightAfter(almanac, night);
    if (night === undefined) break;
    if (night.night.name === name) return makeNumberFact(lesson.date, count);
  }
  return `no \`${name}\` in the ${MOST_NIGHTS_AHEAD} nights after \`${lesson.date}\``;
}
