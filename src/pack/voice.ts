import type { CivilDate, InstantMs } from '../calendar/rules.ts';
import { readWallClock } from '../calendar/wall-clock.ts';
import type { PlaceholderOf, TextKey } from '../content/label-catalogue.ts';
import type { Labels } from '../content/labels.ts';

/** A name of the calendar inside a sentence; a page tags it with the language of the names. */
export interface SaidName {
  readonly name: string;
}

/** A sentence in the language of the labels, in parts: plain text, and names of the calendar. */
export type Sentence = readonly (string | SaidName)[];

/** The sentence as plain text. */
export function renderPlain(sentence: Sentence): string {
  return sentence.map((part) => (typeof part === 'string' ? part : part.name)).join('');
}

/** Says dates, times and sentences about one date, in the words of a language and the local time of a place. */
export interface Voice {
  readonly labels: Labels;
  /** A label as a sentence; names stay apart from the text around them. */
  say<Key extends TextKey>(key: Key, values: Readonly<Record<PlaceholderOf<Key>, string | SaidName>>): Sentence;
  /** `Tuesday 14 July`, with its year where that is not the year of the date spoken of. */
  date(date: CivilDate): string;
  /** `5:25 pm`, with its day where that is not `near`. Local time, floored to the minute as clocks show it. */
  clock(atMs: InstantMs, near: CivilDate): string;
  /** `Tuesday 14 July, 9:43 pm (9:43 am UTC)`: an instant in local and in universal time. */
  instant(atMs: InstantMs): string;
  /** `2 hours 5 minutes`; parts of a minute are left out. */
  duration(minutes: number): string;
}

const MINUTES_PER_HOUR = 60;

/**
 * @param timeZone IANA name of the place's time zone.
 * @param about The date spoken of.
 */
export function createVoice(labels: Labels, timeZone: string, about: CivilDate): Voice {
  const sayDate = (date: CivilDate) => labels.date(date, date.slice(0, 4) === about.slice(0, 4) ? 'day' : 'long');
  const sayClock = (date: CivilDate, time: string, near: CivilDate) =>
    date === near
      ? labels.clock(time)
      : labels.text('clock-on-day', { time: labels.clock(time), day: labels.date(date, 'day') });
  return {
    labels,
    say: (key, values) => labels.parts(key, values),
    date: sayDate,
    clock: (atMs, near) => {
      const { date, clock } = readWallClock(atMs, timeZone);
      return sayClock(date, clock, near);
    },
    instant: (atMs) => {
      const { date, clock } = readWallClock(atMs, timeZone);
      const utc = readWallClock(atMs, 'UTC');
      const values = { date: sayDate(date), time: labels.clock(clock), utc: sayClock(utc.date, utc.clock, date) };
      return labels.text('local-and-utc', values);
    },
    duration: (minutes) => sayDuration(Math.floor(minutes), labels),
  };
}

function sayDuration(minutes: number, labels: Labels): string {
  if (minutes < 1) return labels.text('under-a-minute');
  const hours = Math.floor(minutes / MINUTES_PER_HOUR);
  const rest = minutes % MINUTES_PER_HOUR;
  if (hours === 0) return labels.count('minutes', rest);
  const saidHours = labels.count('hours', hours);
  if (rest === 0) return saidHours;
  return labels.text('hours-and-minutes', { hours: saidHours, minutes: labels.count('minutes', rest) });
}
