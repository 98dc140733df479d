import * as z from 'zod/mini';
import { FORGIVE_WORDS, MOST_LINES, MOST_MARKS } from '../question-words.ts';
import { choice, keyed, language, list, named, text, wholeNumber, yesOrNo } from './parts.ts';

const option = keyed({ text: text(), right: z.exactOptional(yesOrNo()), means: z.exactOptional(text()) });

const pair = keyed({ left: text(), right: text() });

const rubricRow = keyed({ marks: wholeNumber(0, MOST_MARKS), for: text('what earns the marks') });

const question = keyed({
  ask: text('the question'),
  options: z.exactOptional(list(option, 'options', 2)),
  answers: z.exactOptional(list(text(), 'accepted answers')),
  forgive: z.exactOptional(choice(FORGIVE_WORDS)),
  order: z.exactOptional(list(text(), 'things in the right order', 2)),
  headings: z.exactOptional(pair),
  pairs: z.exactOptional(list(pair, 'pairs', 2)),
  rubric: z.exactOptional(list(rubricRow, 'lines of a rubric')),
  lines: z.exactOptional(wholeNumber(1, MOST_LINES)),
  draw: z.exactOptional(text('a day of the week or the name of a night')),
  marks: z.exactOptional(wholeNumber(1, MOST_MARKS)),
  working: z.exactOptional(text()),
  hint: z.exactOptional(text()),
  check: z.exactOptional(text('what the right answer is compared with')),
});

/** A questions file as written. How keys of a question go together is checked apart. */
export const questionsSchema = keyed({
  title: text(),
  language: language(),
  questions: named(question, 'questions'),
});

/** A questions file as written, after the schema. */
export type WrittenQuestions = z.infer<typeof questionsSchema>;

/** One question of it. */
export type WrittenBankQuestion = WrittenQuestions['questions'][string];
