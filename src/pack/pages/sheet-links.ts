import type { Labels } from '../../content/labels.ts';
import type { PlacedLesson } from './page-context.ts';

/** A learners' page of a lesson. */
export interface SheetLink {
  readonly title: string;
  /** What it is, such as "4 papers". */
  readonly kind: string;
  readonly path: string;
}

/** The papers and handouts of a lesson, in order: what is printed before class. */
export function listSheets(labels: Labels, { lesson, paths }: PlacedLesson): SheetLink[] {
  const papers = lesson.quizzes.map((quiz, index) =>
    describeSheet(quiz.title, labels.count('papers', quiz.papers.length), paths.papers[index]),
  );
  const handouts = lesson.handouts.map((handout, index) =>
    describeSheet(handout.title, labels.text('handout'), paths.handouts[index]),
  );
  return [...papers, ...handouts];
}

function describeSheet(title: string, kind: string, path: string | undefined): SheetLink {
  if (path === undefined) throw new Error(`No path for the sheet \`${title}\`.`);
  return { title, kind, path };
}
