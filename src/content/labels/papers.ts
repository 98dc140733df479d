import type { LabelEntry } from '../label-entry.ts';

/** Words of quiz papers and of the key. */
export const PAPER_LABELS = {
  'seat-number': { english: 'Seat {n}', about: 'On a paper, before the role of the learner in this seat' },
  'write-in-order': {
    english: 'Write the letters in order.',
    about: 'How to answer a question about an order',
  },
  'write-pairs': {
    english: 'Write one letter in each box.',
    about: 'How to answer a question about pairs',
  },
  'draw-moon': {
    english: 'Draw the Moon in the circle. Shade the part that is dark.',
    about: 'How to answer a question with a drawing',
  },
  'order-first': { english: 'first', about: 'Before the boxes for an order' },
  'order-last': { english: 'last', about: 'After the boxes for an order' },
  'letter-box': { english: 'Letter:', about: 'Before a box for a letter, for screen readers' },
  'disc-up': { english: 'up', about: 'Above the circle for a drawing of the Moon' },
  'empty-disc': { english: 'An empty circle to draw in', about: 'The circle for a drawing, for screen readers' },
  'key-in-order': { english: 'In order:', about: 'In the key, before the letters of an order' },
  'key-like-this': {
    english: 'It looks like this: {description}',
    about: 'In the key, beside the drawing of the Moon',
  },
  'key-hint': { english: 'If they are stuck: {hint}', about: 'In the key, what to say to a group that is stuck' },
  'key-right-option': { english: '(right)', about: 'In the key, after a right option, for screen readers' },
  'key-if-written': { english: 'If they wrote', about: 'In the key, above wrong answers and what they mean' },
  'key-forgive-all': {
    english: 'Capital letters and marks on letters do not matter.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-forgive-case': {
    english: 'Capital letters do not matter; marks on letters do.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-forgive-accents': {
    english: 'Marks on letters do not matter; capital letters do.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-forgive-nothing': {
    english: 'Capital letters and marks on letters must be right.',
    about: 'In the key, how strictly to mark a written answer',
  },
  'key-earns': { english: 'what earns it', about: 'In the key, above the lines of a rubric' },
  'key-rule': { english: 'How to mark', about: 'In the key, above the rules of marking' },
  'key-rule-several': {
    english: 'Several right options: a mark for each right tick, less one for each wrong tick, never below 0.',
    about: 'In the key, how to mark',
  },
  'key-rule-order': {
    english:
      'Put in order: a share of the marks for each letter in its place; all or nothing for a question of 1 mark.',
    about: 'In the key, how to mark',
  },
  'key-rule-match': {
    english: 'Pairs: a share of the marks for each right pair.',
    about: 'In the key, how to mark',
  },
  'key-rule-half': { english: 'Round down to half marks.', about: 'In the key, how to mark' },
} as const satisfies Readonly<Record<string, LabelEntry>>;
