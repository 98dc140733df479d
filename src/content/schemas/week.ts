import * as z from 'zod/mini';
import { date, keyed, list, text, weekDay, wholeNumberFrom } from './parts.ts';

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
    'relief-notes': z.exactOptional(list(text(), 'notes', 0)),
  },
  'the keys `title`, `begins`, `school` and `for`, or `term` and `week` in place of `begins`',
);

/** A week.yaml file as written, after the schema. */
export type WrittenWeek = z.infer<typeof weekSchema>;
