import type { NightRecord } from '../../calendar/almanac-types.ts';
import type { CheckWord } from '../../content/question-words.ts';
import {
  type FactSetting,
  tellGroup,
  tellLitSide,
  tellMonth,
  tellNight,
  tellNightsUntil,
  tellNumber,
} from './answer-facts.ts';
import type { CalendarFact } from './calendar-fact.ts';
import { findDayFault, findGroupFault, findRunFault, type ListFault, type TextPair } from './list-faults.ts';

/** One thing that the right answer of a handwritten question can be held against. */
export type CalendarCheck = {
  /** What the right answer is, for the authors' reference. */
  readonly about: string;
} & (
  | {
      /** The questions it is for: those with one answer, in options or written; things in order; pairs. */
      readonly of: 'answer';
      readonly takes: 'day';
      /** A text where there is nothing to compare: what is there instead, for a message. */
      tell(record: NightRecord, setting: FactSetting): CalendarFact | string;
    }
  | {
      readonly of: 'answer';
      readonly takes: 'night';
      tell(name: string, setting: FactSetting): CalendarFact | string;
    }
  | {
      readonly of: 'order';
      readonly takes: 'nothing';
      findFault(items: readonly string[], setting: FactSetting): ListFault | undefined;
    }
  | {
      readonly of: 'match';
      readonly takes: 'nothing';
      findFault(pairs: readonly TextPair[], setting: FactSetting): ListFault | undefined;
    }
);

/** All checks, by the word that an author writes. */
export const CALENDAR_CHECKS: Readonly<Record<CheckWord, CalendarCheck>> = {
  'night-on': { of: 'answer', takes: 'day', about: 'the name of the night of a day of this week', tell: tellNight },
  'number-on': {
    of: 'answer',
    takes: 'day',
    about: 'which night of its month the night of a day is, in figures',
    tell: tellNumber,
  },
  'month-on': {
    of: 'answer',
    takes: 'day',
    about: "the name of the month that a day's night lies in",
    tell: tellMonth,
  },
  'group-on': {
    of: 'answer',
    takes: 'day',
    about: "the name of the group that a day's night belongs to",
    tell: tellGroup,
  },
  'lit-side-on': {
    of: 'answer',
    takes: 'day',
    about:
      "which side of the Moon is lit as it is best seen from the school in a day's night: an answer with the word for left, right, top or bottom in it",
    tell: tellLitSide,
  },
  'nights-until': {
    of: 'answer',
    takes: 'night',
    about: "how many nights it is from the night of the lesson's date to the next of a name, in figures",
    tell: tellNightsUntil,
  },
  'in-run': {
    of: 'order',
    takes: 'nothing',
    about: "names of nights, in the order in which they come in the month of the lesson's date",
    findFault: findRunFault,
  },
  'nights-on-days': {
    of: 'match',
    takes: 'nothing',
    about: "days of the lesson's week, by their names alone, each beside its night",
    findFault: findDayFault,
  },
  'nights-in-groups': {
    of: 'match',
    takes: 'nothing',
    about: 'names of nights, each beside its group',
    findFault: findGroupFault,
  },
};
