import {
  GESTURES_PAGE,
  KEY_PAGE,
  LEARNERS_FOLDER,
  nameKeyAnchor,
  nameKeyPage,
  nameQuizPage,
} from '../directives/page-names.ts';
import type { ResolvedLesson, ResolvedWeek } from '../lesson/model.ts';

/** Where the pages of one lesson stand. */
export interface LessonPaths {
  readonly page: string;
  /** One for each of the lesson's quizzes, in order. */
  readonly papers: readonly string[];
  /** The answers to the lesson's quizzes; absent where it has none. */
  readonly key?: string;
  /** Anchors on the key, one for each of the lesson's quizzes, in order. */
  readonly keyAnchors: readonly string[];
  /** One for each of the lesson's handouts, in order. */
  readonly handouts: readonly string[];
}

/** Every page of a pack, as a path from the pack's root with forward slashes; no two are the same. */
export interface PackPaths {
  readonly start: string;
  /** The list of the lessons' keys. */
  readonly key: string;
  readonly score: string;
  /** How each gesture is done. */
  readonly gestures: string;
  readonly learners: string;
  /** In the order of the week's lessons. */
  readonly lessons: readonly LessonPaths[];
}

/** Fixes the paths of a week's pages. Throws when two pages would be one file: stems were not unique. */
export function computePackPaths(week: ResolvedWeek): PackPaths {
  const paths: PackPaths = {
    start: 'index.html',
    key: KEY_PAGE,
    score: 'score.html',
    gestures: GESTURES_PAGE,
    learners: `${LEARNERS_FOLDER}/index.html`,
    lessons: week.lessons.map(computeLessonPaths),
  };
  requireUnique(listPackPaths(paths));
  return paths;
}

/** All paths of a pack, in the order in which a reader meets them. */
export function listPackPaths(paths: PackPaths): string[] {
  return [
    paths.start,
    ...paths.lessons.map((lesson) => lesson.page),
    paths.key,
    ...listKeys(paths),
    paths.score,
    paths.gestures,
    paths.learners,
    ...paths.lessons.flatMap((lesson) => [...lesson.papers, ...lesson.handouts]),
  ];
}

/** The keys of the lessons that have any, in order. */
export function listKeys({ lessons }: PackPaths): string[] {
  return lessons.flatMap(({ key }) => key ?? []);
}

/** The link from one page of a pack to another: both lie at the root or in one folder below it. */
export function linkBetween(from: string, to: string): string {
  const slash = from.indexOf('/');
  if (slash < 0) return to;
  const folder = from.slice(0, slash + 1);
  return to.startsWith(folder) ? to.slice(folder.length) : `../${to}`;
}

function computeLessonPaths(lesson: ResolvedLesson): LessonPaths {
  return {
    page: `${lesson.stem}.html`,
    papers: lesson.quizzes.map((quiz) => `${LEARNERS_FOLDER}/${nameQuizPage(lesson.stem, quiz.number)}`),
    ...(lesson.quizzes.length === 0 ? {} : { key: nameKeyPage(lesson.stem) }),
    keyAnchors: lesson.quizzes.map((quiz) => nameKeyAnchor(lesson.slug, quiz.number)),
    handouts: lesson.handouts.map((handout) => `${LEARNERS_FOLDER}/${handout.page}`),
  };
}

function requireUnique(paths: readonly string[]): void {
  const twice = paths.find((path, index) => paths.indexOf(path) !== index);
  if (twice !== undefined) throw new Error(`Two pages of the pack would be \`${twice}\`.`);
}
