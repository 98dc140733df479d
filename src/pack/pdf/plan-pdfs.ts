import { LEARNERS_FOLDER, nameInAscii } from '../../directives/page-names.ts';
import type { ResolvedWeek } from '../../lesson/model.ts';
import { computePackPaths, listKeys } from '../pack-paths.ts';

/** A PDF file of a pack, and what it is made of. */
export interface PlannedPdf {
  /** Path in the pack. */
  readonly path: string;
  /** What programs call it. */
  readonly title: string;
  /** Paths of its pages, in order; one or more. */
  readonly pages: readonly string[];
  /** Whether each of its sheets is for somebody else, so that nothing may stand on a back. */
  readonly isOneSided: boolean;
}

const PDF_FOLDER = 'pdf';

/** Where PDF files for learners are: their part of a pack can be copied alone. */
export const LEARNERS_PDF_FOLDER = `${LEARNERS_FOLDER}/${PDF_FOLDER}`;

/**
 * The PDF files of a week's pack, by how many copies of each are wanted: all that the teacher prints, once; the month for
 * the wall, on its own large paper; for learners, within their own part of the pack, a paper for each group, and handouts
 * for everyone. None of those that would be empty.
 */
export function planPdfs(week: ResolvedWeek): PlannedPdf[] {
  const { labels, plan } = week;
  const { title } = plan;
  const paths = computePackPaths(week);
  // Away from its pack a file should still say of which week it is.
  const stem = nameInAscii(plan.id);
  const name = (folder: string, rest: string) => `${folder}/${stem === '' ? rest : `${stem}-${rest}`}.pdf`;
  return [
    {
      path: name(PDF_FOLDER, 'teacher'),
      title: labels.text('pdf-teacher', { title }),
      pages: [paths.start, ...paths.lessons.map(({ page }) => page), ...listKeys(paths), paths.gestures],
      isOneSided: false,
    },
    {
      path: name(PDF_FOLDER, 'wall-a3'),
      title: labels.text('pdf-wall', { title }),
      pages: [paths.score],
      isOneSided: true,
    },
    {
      path: name(LEARNERS_PDF_FOLDER, 'papers'),
      title: labels.text('pdf-papers', { title }),
      pages: paths.lessons.flatMap(({ papers }) => papers),
      isOneSided: true,
    },
    {
      path: name(LEARNERS_PDF_FOLDER, 'handouts'),
      title: labels.text('pdf-handouts', { title }),
      pages: paths.lessons.flatMap(({ handouts }) => handouts),
      isOneSided: true,
    },
  ].filter(({ pages }) => pages.length > 0);
}
