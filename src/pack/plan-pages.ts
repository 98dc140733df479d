import type { Root } from 'hast';
import type { ResolvedWeek } from '../lesson/model.ts';
import { stringifyHast } from '../lesson/stringify-hast.ts';
import { computePackPaths, type LessonPaths } from './pack-paths.ts';
import type { PackFile } from './pack-plan.ts';
import type { Digest } from './page-shell.ts';
import { renderDayPage } from './pages/day-page.ts';
import { renderGesturesPage } from './pages/gestures-page.ts';
import { renderHandoutPage } from './pages/handout-page.ts';
import { renderKeyListPage } from './pages/key-list-page.ts';
import { renderKeyPage } from './pages/key-page.ts';
import { renderLearnersPage } from './pages/learners-page.ts';
import { createNameBook } from './pages/name-book.ts';
import { countQuizzesBefore, createPageContext, listPlacedLessons, type PlacedLesson } from './pages/page-context.ts';
import { renderPaperPage } from './pages/paper-page.ts';
import { renderScorePage } from './pages/score-page.ts';
import { renderStartPage } from './pages/start-page.ts';
import { writeHandout } from './pages/write-handout.ts';
import { findTitle, tellTitlesApart } from './tell-titles-apart.ts';

/** All pages of a week's pack as HTML text, in the order in which a reader meets them. */
export function planPages(week: ResolvedWeek, digest: Digest): PackFile[] {
  const paths = computePackPaths(week);
  const context = createPageContext(week, paths, digest);
  const placed = listPlacedLessons(context);
  const learners = planLearnersPages(week, digest);
  const teachers = [
    planPage(paths.start, renderStartPage(context)),
    ...placed.map((each) => planPage(each.paths.page, renderDayPage(context, each))),
    planPage(paths.key, renderKeyListPage(context)),
    ...placed.flatMap((each) =>
      each.paths.key === undefined ? [] : [planPage(each.paths.key, renderKeyPage(context, each))],
    ),
    planPage(paths.score, renderScorePage(context)),
    planPage(paths.gestures, renderGesturesPage(context)),
  ];
  // Learners' titles are given first: nothing of their pages hangs on the teacher's.
  return [
    ...tellTitlesApart(
      teachers,
      learners.flatMap((page) => findTitle(page) ?? []),
    ),
    ...learners,
  ];
}

/** The pages for learners alone, the same as among all pages. */
export function planLearnersPages(week: ResolvedWeek, digest: Digest): PackFile[] {
  const paths = computePackPaths(week);
  const placed = listPlacedLessons({ week, paths });
  return tellTitlesApart([
    planPage(paths.learners, renderLearnersPage(listForLearners(week, paths.learners, placed, digest))),
    ...placed.flatMap((each) => planSheets(week, each, countQuizzesBefore(placed, each.lesson), digest)),
  ]);
}

function planPage(path: string, page: Root): PackFile {
  return { path, content: `${stringifyHast(page)}\n` };
}

/** A lesson's papers and handouts. What is handed to their pages holds no answers. */
function planSheets(
  week: ResolvedWeek,
  { lesson, paths }: PlacedLesson,
  quizzesBefore: number,
  digest: Digest,
): PackFile[] {
  const { labels, school } = week;
  const book = createNameBook(week);
  const frame = {
    labels,
    authorsLanguage: school.language,
    schoolName: school.name,
    date: lesson.tonight.date,
    digest,
  };
  return [
    ...lesson.quizzes.map((quiz, index) =>
      planPage(requirePath(paths, 'papers', index), renderPaperPage(quiz.papers, quizzesBefore + index + 1, frame)),
    ),
    ...lesson.handouts.map((handout, index) =>
      planPage(requirePath(paths, 'handouts', index), renderHandoutPage(writeHandout(week, handout, book), frame)),
    ),
  ];
}

function listForLearners(week: ResolvedWeek, path: string, placed: readonly PlacedLesson[], digest: Digest) {
  const { labels, school } = week;
  return {
    labels,
    schoolName: school.name,
    path,
    digest,
    days: placed.map(({ lesson, paths }) => ({
      date: lesson.tonight.date,
      sheets: [
        ...lesson.quizzes.map(({ title }, index) => ({
          title,
          kind: labels.text('group-quiz'),
          path: requirePath(paths, 'papers', index),
        })),
        ...lesson.handouts.map(({ title }, index) => ({
          title,
          kind: labels.text('handout'),
          path: requirePath(paths, 'handouts', index),
        })),
      ],
    })),
  };
}

function requirePath(paths: LessonPaths, kind: 'papers' | 'handouts', index: number): string {
  const path = paths[kind][index];
  if (path === undefined) throw new Error(`No path for one of the ${kind} of ${paths.page}.`);
  return path;
}
