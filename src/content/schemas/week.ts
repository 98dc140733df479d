import * as z from 'zod/mini';
import type { ReliefCase } from '../types.ts';
import { describeChoice } from '../wording.ts';
import { date, keyed, list, text, weekDay, wholeNumberFrom } from './parts.ts';

/** What a note for a relief teacher may be kept for, in the order in which a day shows them. */
export const RELIEF_CASES = ['no-sound', 'no-projector', 'no-copies', 'rain'] as const satisfies readonly ReliefCase[];

const NOTE = `text, or text under ${describeChoice(RELIEF_CASES)}`;

/** A note as written: text, or text under the case it is for. Which keys there are is checked apart, for a near miss. */
const reliefNote = z.union([text(), z.record(z.string(), text())], { error: NOTE });

/** A week.yaml file as written. Either `begins` (a Monday), or `term` and `week`: checked apart, as is how many weeks the term has. */
export const weekSchema = keyed(
  {
    title: text(),
    begins: z.exactOptional(date()),
    term: z.exactOptional(text('the name of a term of the school')),
    week: z.exactOptional(wholeNumberFrom(1)),
    days: z.exactOptional(list(weekDay(), 'days of the week')),
    school: text('the name of a school file'),
    for: text('whom the week is for'),
    'relief-notes': z.exactOptional(list(reliefNote, 'notes', 0)),
  },
  'the keys `title`, `begins`, `school` and `for`, or `term` and `week` in place of `begins`',
);

/** A week.yaml file as written, after the schema. */
export type WrittenWeek = z.infer<typeof weekSchema>;
