import type { LabelEntry } from '../label-entry.ts';

/** Words of quiz papers and of the key. */
export const PAPER_LABELS = {
  'seat-number': { english: 'Seat {n}', about: 'On a paper, before the role of the learner in this seat' },
  'write-in-order': { english: 'Write the letters in order.', about: 'How to answer a question about an order' },
  'write-pairs': { english: 'Write one letter in each box.', about: 'How to answer a question about pairs' },
  'draw-moon': {
    english: 'Shade the dark part. Leave the lit part white.',
    about: 'How to answer a question with a drawing of the Moon',
  },
  'order-first': { english: 'first', about: 'Before the boxes for an order' },
  'order-last': { english: 'last', about: 'After the boxes for an order' },
  'letter-box': { english: 'Letter:', about: 'Before a box for a letter, for screen readers' },
  'disc-up': { english: 'up', about: 'Above the circle for a drawing of the Moon, after an arrow that points up' },
  'empty-disc': {
    english: 'An empty circle to draw the Moon in. Up in the sky is at the top.',
    about: 'The circle for a drawing, for screen readers',
  },
  'key-jump': { english: 'Go to:', about: 'In the key, before links to the parts of a quiz' },
  'key-in-order': { english: 'In order:', about: 'In the key, before the letters of an order' },
  'key-like-this': {
    english: 'It looks like this: {description}',
    about: 'In the key, beside the drawing of the Moon',
  },
  'key-drawing-marks': {
    english: 'Half of the marks for how much is lit, half for the side that is lit.',
    about: 'In the key, how to mark a drawing of the Moon',
  },
  'key-say': { english: 'Say:', about: 'In the key, before what the teacher may say to explain an answer' },
  'key-hint': { english: 'If they are stuck:', about: 'In the key, before what to say to a group that is stuck' },
  'key-right-option': { english: '(right)', about: 'In the key, after a right option, for screen readers' },
  'key-if-written': { english: 'If they wrote:', about: 'In the key, before wrong answers and what they mean' },
  'key-forgive-all': {
    english: 'Capital letters, macrons and other marks on letters do not matter.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-forgive-case': {
    english: 'Capital letters do not matter; macrons and other marks on letters do.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-forgive-accents': {
    english: 'Macrons and other marks on letters do not matter; capital letters do.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-forgive-nothing': {
    english: 'Capital letters, macrons and other marks on letters must be right.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-rule': { english: 'How to mark', about: 'In the key, above the rules of marking' },
  'key-rule-several': {
    english:
      'Several right answers: each right tick earns its share of the marks, each wrong tick takes a share away; never less than 0.',
    about: 'In the key, how to mark',
  },
  'key-rule-order': {
    english:
      'Put in order: each letter in its right place earns its share of the marks; a question worth 1 mark is right as a whole, or not.',
    about: 'In the key, how to mark',
  },
  'key-rule-match': {
    english: 'What belongs together: each right letter earns its share of the marks.',
    about: 'In the key, how to mark',
  },
  'key-rule-half': { english: 'Shares are rounded down to half marks.', about: 'In the key, how to mark' },
  'key-jobs': { english: 'Who does what', about: 'In the key, above the roles of the seats' },
  'key-seat-role': { english: 'Seat {n}: {role}', about: 'In the key, the role of a seat' },
  'key-jobs-how': {
    english:
      'The reader reads aloud, the writer writes what all agree on, the checker asks everybody whether they agree, the drummer keeps the beat and an eye on the time. With fewer than four at a table one child does two jobs, with more two share one.',
    about: 'In the key, after the roles of the seats',
  },
  'mark-sheet-of': { english: 'Mark sheet: {title}', about: 'Over the table to write marks in; {title} is a quiz' },
} as const satisfies Readonly<Record<string, LabelEntry>>;
