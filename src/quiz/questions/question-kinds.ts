import type { ComputedKind } from '../model.ts';
import { listNextInRun } from './next-in-run.ts';
import { listNightOfDate } from './night-of-date.ts';
import { listNightsUntil } from './nights-until.ts';
import type { ListInstances } from './question-instance.ts';

/** The computed kinds of question, by the word an author asks for them with. */
export const QUESTION_KINDS: Readonly<Record<ComputedKind, ListInstances>> = {
  'night-of-date': listNightOfDate,
  'nights-until': listNightsUntil,
  'next-in-run': listNextInRun,
};
