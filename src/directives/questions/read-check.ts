import type { NightRecord } from '../../calendar/almanac-types.ts';
import { findNearMiss } from '../../content/near-miss.ts';
import { CHECK_WORDS, type CheckWord } from '../../content/question-words.ts';
import { describeChoice, quote } from '../../content/wording.ts';
import type { ResolveContext } from '../definition.ts';
import { CALENDAR_CHECKS, type CalendarCheck } from './calendar-checks.ts';
import { describeDays, findNightOfDay } from './find-night.ts';
import { reportQuestion } from './report-question.ts';
import type { WrittenValue } from './written-value.ts';

/** A `check` as read: what is compared, and of which night. */
export type ReadCheck =
  | { readonly of: 'answer'; readonly check: CalendarCheck & { readonly takes: 'day' }; readonly record: NightRecord }
  | { readonly of: 'answer'; readonly check: CalendarCheck & { readonly takes: 'night' }; readonly name: string }
  | { readonly of: 'order'; readonly check: CalendarCheck & { readonly of: 'order' } }
  | { readonly of: 'match'; readonly check: CalendarCheck & { readonly of: 'match' } };

/** Reads `night-on wednesday` and the like; what cannot be read is reported. */
export function readCheck(written: WrittenValue, context: ResolveContext): ReadCheck | undefined {
  const [, word = '', argument = ''] = /^(\S*)\s*(.*)$/su.exec(written.text) ?? [];
  if (!isCheckWord(word)) {
    reportWord(
      written,
      word,
      CHECK_WORDS,
      `${describeChoice(CHECK_WORDS)}, and what it is to be compared with`,
      context,
    );
    return undefined;
  }
  const check = CALENDAR_CHECKS[word];
  switch (check.takes) {
    case 'day': {
      const record = findNightOfDay(argument, context);
      if (record !== undefined) return { of: 'answer', check, record };
      reportWord(written, argument, [...context.dates.keys()], `\`${word}\` and ${describeDays(context)}`, context);
      return undefined;
    }
    case 'night': {
      const names = context.almanac.run.map(({ name }) => name);
      if (names.includes(argument)) return { of: 'answer', check, name: argument };
      reportWord(written, argument, names, `\`${word}\` and the name of a night of the calendar`, context);
      return undefined;
    }
    case 'nothing':
      if (argument === '') return check.of === 'order' ? { of: 'order', check } : { of: 'match', check };
      reportWord(written, argument, [], `\`${word}\` alone`, context);
      return undefined;
  }
}

function isCheckWord(word: string): word is CheckWord {
  return CHECK_WORDS.some((known) => known === word);
}

function reportWord(
  { place, called }: WrittenValue,
  word: string,
  known: readonly string[],
  expected: string,
  context: ResolveContext,
): void {
  const near = findNearMiss(word, known);
  reportQuestion(context, place, called, expected, near === undefined ? 'mend it' : `did you mean ${quote(near)}?`);
}
