import { defineInlineWords } from './define-inline-words.ts';

export const night = defineInlineWords(
  {
    name: 'night',
    about: "The name of a day's night, in a line of prose.",
    example: 'On Friday it is :night{on=friday}.',
  },
  (record) => record.night.name,
  { tellsNight: true },
);
