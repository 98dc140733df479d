import type { Almanac, NightRecord } from '../calendar/almanac-types.ts';
import type { CalendarRules, CivilDate } from '../calendar/rules.ts';
import { addDays } from '../content/civil-date.ts';
import type { Labels } from '../content/labels.ts';
import type { Calendar, School } from '../content/types.ts';
import { listNightEclipses } from '../directives/eclipse-notice.ts';
import { fillSentence } from '../directives/fill-sentence.ts';
import { listEclipseCare, sayCare, sayEclipse } from '../directives/sky-words.ts';
import { escapeIcsText, foldIcsLine } from './ics-line.ts';
import { sayStretch } from './say-explanation.ts';
import { createVoice, renderPlain } from './voice.ts';

/** Whose nights a calendar file holds. */
export interface IcsSource {
  readonly school: School;
  readonly calendar: Calendar;
  readonly almanac: Almanac;
  readonly labels: Labels;
}

/** Where nothing was observed or announced, nights are as they always were; RFC 5545 wants some date all the same. */
const EARLIEST_STAMP: CivilDate = '1970-01-01';

/**
 * Nights as an iCalendar file (RFC 5545), in chunks of whole lines without the last line end (CR LF): the head, an event
 * a night, the foot. Each is an all-day event on the date that the night carries, its end the next date, not included; there are no
 * rules of recurrence, since no rule of that kind can follow the Moon.
 * - `UID` depends on the date, the calendar file and the school file only, so a file made anew replaces the old events.
 * - `DTSTAMP` is the newest date among the observations and announced months, or else 1970-01-01: the same content gives
 *   the same bytes at any time. It tells of a change only where the new observation or announced month bears a later date
 *   than all others, and lies ahead where months are announced ahead; programs that subscribe go by `UID` all the same.
 * @param nights In order; taken one by one.
 */
export function* renderNightsIcs(source: IcsSource, nights: Iterable<NightRecord>): Generator<string> {
  yield joinLines(listHead(source));
  const stamp = computeStamp(source.calendar);
  for (const night of nights) yield joinLines(listEvent(source, night, stamp));
  yield 'END:VCALENDAR';
}

function joinLines(lines: readonly string[]): string {
  return lines.map(foldIcsLine).join('\r\n');
}

function listHead({ calendar, school, labels }: IcsSource): string[] {
  const title = escapeIcsText(`${calendar.title}, ${school.name}`);
  return [
    'BEGIN:VCALENDAR',
    'VERSION:2.0',
    'PRODID:-//Lessontide//Nights//EN',
    'CALSCALE:GREGORIAN',
    `NAME;LANGUAGE=${calendar.language}:${title}`,
    // The name before RFC 7986 gave it one; common practice, no source.
    `X-WR-CALNAME:${title}`,
    `DESCRIPTION;LANGUAGE=${labels.language}:${escapeIcsText(describeCalendar(calendar, labels))}`,
  ];
}

function describeCalendar({ note, keeper }: Calendar, labels: Labels): string {
  const keeperFirst = labels.text('keeper-first', { keeper });
  return [...(note === undefined ? [] : [note]), keeperFirst, labels.text('not-a-tide-table')].join(' ');
}

function listEvent(source: IcsSource, night: NightRecord, stamp: string): string[] {
  const { calendar, school, labels } = source;
  const { date } = night;
  return [
    'BEGIN:VEVENT',
    `UID:${escapeIcsText(`${date}.${calendar.id}.${school.id}@lessontide`)}`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${renderBasicDate(date)}`,
    `DTEND;VALUE=DATE:${renderBasicDate(addDays(date, 1))}`,
    `SUMMARY;LANGUAGE=${calendar.language}:${escapeIcsText(night.night.name)}`,
    `DESCRIPTION;LANGUAGE=${labels.language}:${escapeIcsText(describeNight(source, night))}`,
    `CATEGORIES;LANGUAGE=${calendar.language}:${escapeIcsText(night.night.group)}`,
    // A night does not keep anybody busy.
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ];
}

/**
 * The tradition's sentence, when the night begins, its place in the month, and an eclipse of the Moon. One of the Sun is
 * left to the pages, which say how to look safely: a line on a telephone, at that minute, would only make people look up.
 */
function describeNight(source: IcsSource, night: NightRecord): string {
  const { almanac, calendar, labels } = source;
  const voice = createVoice(labels, almanac.place.timeZone, night.date);
  const stretch = sayStretch({ ...night, dayBegins: calendar.dayBegins }, voice).map(renderPlain);
  const place = labels.text('night-of-month', { n: night.nightOfMonth, length: night.month.length });
  const repeat = night.repeat ? `; ${labels.text('night-repeats')}` : '';
  const inMonth = `(${night.month.name}, ${place}${repeat})`;
  return [fillSentence(calendar.sentence, night), ...stretch, inMonth, ...sayMoonEclipses(source, night)].join(' ');
}

function sayMoonEclipses({ almanac, labels }: IcsSource, night: NightRecord): string[] {
  const eclipses = listNightEclipses(almanac.place, night).filter(({ of }) => of === 'moon');
  if (eclipses.length === 0) return [];
  return [
    ...eclipses.map((eclipse) => sayEclipse(eclipse, labels, almanac.place.timeZone)),
    sayCare(listEclipseCare(eclipses), labels),
  ];
}

function renderBasicDate(date: CivilDate): string {
  return date.replaceAll('-', '');
}

function computeStamp({ observations, announcedMonths }: CalendarRules): string {
  const dates = [EARLIEST_STAMP, ...observations.map(({ date }) => date), ...announcedMonths];
  return `${renderBasicDate(dates.reduce((newest, date) => (date > newest ? date : newest)))}T000000Z`;
}
