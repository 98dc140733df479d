import type { LabelEntry } from '../label-entry.ts';

/** Words of quizzes in an assessment tool, beside those of the papers. */
export const QTI_LABELS = {
  'qti-empty-disc': {
    english: 'An empty circle.',
    about: 'Of the circle in which the Moon is drawn, for a screen reader',
  },
  'qti-hand-in-drawing': {
    english: 'Draw on paper, in a circle like this one. Then hand in a picture of your drawing.',
    about: 'In an assessment tool, under the question that asks to draw the Moon',
  },
} as const satisfies Readonly<Record<string, LabelEntry>>;
