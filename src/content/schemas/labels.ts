import * as z from 'zod/mini';
import { keyed, language, text } from './parts.ts';

/** The plural forms of Unicode CLDR; a language uses some of them and always `other`. */
const plural = keyed({
  zero: z.exactOptional(text()),
  one: z.exactOptional(text()),
  two: z.exactOptional(text()),
  few: z.exactOptional(text()),
  many: z.exactOptional(text()),
  other: text(),
});

const LABEL = 'text, or the keys `one` and `other` with text';

/** A labels file as written. Keys and placeholders are checked against the catalogue apart. */
export const labelsSchema = keyed({
  language: language(),
  labels: z.record(z.string(), z.union([text(), plural], { error: LABEL }), { error: 'labels, each under its key' }),
});

/** A labels file as written, after the schema. */
export type WrittenLabels = z.infer<typeof labelsSchema>;
