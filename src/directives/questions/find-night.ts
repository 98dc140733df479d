import type { NightRecord } from '../../calendar/almanac-types.ts';
import { findNearMiss } from '../../content/near-miss.ts';
import type { WeekDay } from '../../content/types.ts';
import { describeChoice, quote } from '../../content/wording.ts';
import type { ResolveContext } from '../definition.ts';
import { reportQuestion } from './report-question.ts';
import type { WrittenValue } from './written-value.ts';

type Setting = Pick<ResolveContext, 'almanac' | 'dates' | 'lesson' | 'report'>;

/** The night of a day that is taught in this week; undefined for any other word, with no message. */
export function findNightOfDay(word: string, { almanac, dates }: Setting): NightRecord | undefined {
  // A word that is no day of the week is no key of the dates either.
  const date = dates.get(word as WeekDay);
  return date === undefined ? undefined : almanac.nightOn(date);
}

/** The days that an author may name, for messages. */
export function describeDays({ dates }: Setting): string {
  return `a day of this week, ${describeChoice([...dates.keys()])}`;
}

/**
 * The night that `draw` asks for: that of a day of this week, or that of a name in the month of the lesson's date, the
 * first if it is said twice there. What cannot be found is reported.
 */
export function requireDrawnNight(written: WrittenValue, context: Setting): NightRecord | undefined {
  const { almanac, dates, lesson } = context;
  const { text, place, called } = written;
  const ofDay = findNightOfDay(text, context);
  if (ofDay !== undefined) return ofDay;
  const names = almanac.run.map(({ name }) => name);
  if (!names.includes(text)) {
    const near = findNearMiss(text, [...dates.keys(), ...names]);
    const expected = `${describeDays(context)}, or the name of a night of the calendar`;
    const advice = near === undefined ? 'mend the value' : `did you mean ${quote(near)}?`;
    reportQuestion(context, place, called, expected, advice);
    return undefined;
  }
  const ofName = almanac.nightsOfMonth(lesson.date).find(({ night }) => night.name === text);
  if (ofName === undefined) {
    const found = `${called}, a night that is left out in the month of \`${lesson.date}\``;
    reportQuestion(context, place, found, 'a night that comes in it', 'name another night');
  }
  return ofName;
}
