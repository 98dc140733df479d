import * as z from 'zod/mini';
import { clockTime, keyed, list, text, weekDay, wholeNumber } from './parts.ts';

/** A lesson's front matter as written. */
export const lessonHeadSchema = keyed({
  title: text(),
  day: weekDay(),
  minutes: wholeNumber(10, 240),
  intentions: list(text(), 'learning intentions'),
  success: list(text(), 'success criteria'),
  materials: list(text(), 'materials', 0),
  begins: z.exactOptional(clockTime()),
});
