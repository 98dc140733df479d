import type { LabelEntry } from '../label-entry.ts';

/** Titles of PDF files: what programs show while one is open. */
export const PDF_LABELS = {
  'pdf-teacher': { english: '{title}: for the teacher', about: 'Title of a PDF with lessons and answers' },
  'pdf-wall': { english: '{title}: the month for the wall', about: 'Title of a PDF with the poster of the month' },
  'pdf-papers': { english: '{title}: papers for groups', about: 'Title of a PDF with the papers of quizzes' },
  'pdf-handouts': { english: '{title}: handouts', about: 'Title of a PDF with what each learner gets' },
} as const satisfies Readonly<Record<string, LabelEntry>>;
