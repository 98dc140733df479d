import * as z from 'zod/mini';
import { keyed, language, list, named, text, wholeNumber, yesOrNo } from './parts.ts';

const option = keyed({ text: text(), right: z.exactOptional(yesOrNo()) });

const question = keyed({
  ask: text('the question'),
  options: z.exactOptional(list(option, 'options', 2)),
  answers: z.exactOptional(list(text(), 'accepted answers')),
  marks: z.exactOptional(wholeNumber(1, 20)),
  working: z.exactOptional(text()),
});

/** A questions file as written. That each has exactly one of `options` and `answers` is checked apart. */
export const questionsSchema = keyed({
  title: text(),
  language: language(),
  questions: named(question, 'questions'),
});

/** A questions file as written, after the schema. */
export type WrittenQuestions = z.infer<typeof questionsSchema>;
