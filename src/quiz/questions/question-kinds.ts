import { beatsInGroup } from './beats-in-group.ts';
import { beforeInRun } from './before-in-run.ts';
import { dateOfNight } from './date-of-night.ts';
import { finishSentence } from './finish-sentence.ts';
import { gestureOfNight } from './gesture-of-night.ts';
import { groupOfNight } from './group-of-night.ts';
import { litSide } from './lit-side.ts';
import { matchMoons } from './match-moons.ts';
import { monthOfDate } from './month-of-date.ts';
import { monthsInYear } from './months-in-year.ts';
import { moonUpAt } from './moon-up-at.ts';
import { nextInRun } from './next-in-run.ts';
import { nightOfDate } from './night-of-date.ts';
import { nightsUntil } from './nights-until.ts';
import { oddOneOut } from './odd-one-out.ts';
import { orderNights } from './order-nights.ts';
import type { QuestionKind } from './question-instance.ts';
import { runLength } from './run-length.ts';

/** The computed kinds of question, by the word an author asks for them with. */
export const QUESTION_KINDS = {
  'night-of-date': nightOfDate,
  'date-of-night': dateOfNight,
  'nights-until': nightsUntil,
  'next-in-run': nextInRun,
  'before-in-run': beforeInRun,
  'group-of-night': groupOfNight,
  'beats-in-group': beatsInGroup,
  'order-nights': orderNights,
  'odd-one-out': oddOneOut,
  'month-of-date': monthOfDate,
  'months-in-year': monthsInYear,
  'finish-sentence': finishSentence,
  'match-moons': matchMoons,
  'lit-side': litSide,
  'moon-up-at': moonUpAt,
  'gesture-of-night': gestureOfNight,
  'run-length': runLength,
} as const satisfies Readonly<Record<string, QuestionKind>>;

/** The word an author asks for a computed question with. */
export type ComputedKind = keyof typeof QUESTION_KINDS;
