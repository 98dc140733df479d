import { defineInlineWords } from './define-inline-words.ts';

export const month = defineInlineWords(
  {
    name: 'month',
    about: "The name of the month that a day's night lies in, in a line of prose.",
    example: 'We are in :month{}.',
  },
  (record) => record.month.name,
  { tellsNight: false },
);
