import { defineInlineWords } from './define-inline-words.ts';
import { fillSentence } from './fill-sentence.ts';

export const sentence = defineInlineWords(
  {
    name: 'sentence',
    about: "The calendar's sentence for a day's night, in a line of prose.",
    example: 'Say together: :sentence{on=friday}',
  },
  (record, calendar) => fillSentence(calendar.sentence, record),
  { tellsNight: true },
);
