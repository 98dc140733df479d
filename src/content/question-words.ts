/** What a marker may overlook in a short answer. `macrons` stands for all marks on letters. */
export const FORGIVE_WORDS = ['all', 'case', 'macrons', 'nothing'] as const;
export type ForgiveWord = (typeof FORGIVE_WORDS)[number];

/** What the right answer of a question may be compared with; each is computed from the calendar. */
export const CHECK_WORDS = [
  'night-on',
  'number-on',
  'month-on',
  'group-on',
  'lit-side-on',
  'nights-until',
  'in-run',
  'nights-on-days',
  'nights-in-groups',
] as const;
export type CheckWord = (typeof CHECK_WORDS)[number];

/** Lines for an open answer: at most about a page of A4, and as many as most answers need. Our own choice. */
export const MOST_LINES = 20;
export const USUAL_LINES = 3;

/** The most marks a question may have. */
export const MOST_MARKS = 20;
