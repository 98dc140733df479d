import type { ElementContent } from 'hast';
import type { ViewContext } from '../../directives/definition.ts';
import type { ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';
import type { LessonPaths, PackPaths } from '../pack-paths.ts';
import type { Digest } from '../page-shell.ts';

/** What every page of the teacher's part is made from. */
export interface PageContext {
  readonly week: ResolvedWeek;
  readonly paths: PackPaths;
  readonly digest: Digest;
  readonly view: ViewContext;
}

/** A lesson with the paths of its pages. */
export interface PlacedLesson {
  readonly lesson: ResolvedLesson;
  readonly paths: LessonPaths;
}

/** @param paths The paths of the same week, from `computePackPaths`. */
export function createPageContext(week: ResolvedWeek, paths: PackPaths, digest: Digest): PageContext {
  const { labels, calendar } = week;
  const view = { labels, namesLanguage: calendar.language };
  const { explainedIn } = calendar;
  return { week, paths, digest, view: explainedIn === undefined ? view : { ...view, explainedIn } };
}

/** The week's lessons with their paths, in order. Throws when the paths belong to another week. */
export function listPlacedLessons({ week, paths }: Pick<PageContext, 'week' | 'paths'>): PlacedLesson[] {
  return week.lessons.map((lesson, index) => {
    const lessonPaths = paths.lessons[index];
    if (lessonPaths === undefined) throw new Error(`No paths for the lesson \`${lesson.slug}\`.`);
    return { lesson, paths: lessonPaths };
  });
}

/** Quizzes of the week before a lesson's own. */
export function countQuizzesBefore(placed: readonly PlacedLesson[], lesson: ResolvedLesson): number {
  const before = placed.slice(
    0,
    placed.findIndex((each) => each.lesson === lesson),
  );
  return before.reduce((sum, each) => sum + each.lesson.quizzes.length, 0);
}

/** The first lesson of each day leads its group; groups in order of days. */
export function groupByDate<Item extends { readonly lesson: ResolvedLesson }>(items: readonly Item[]): Item[][] {
  const days = new Map<string, Item[]>();
  for (const item of items) {
    const { date } = item.lesson.tonight;
    const day = days.get(date);
    if (day === undefined) days.set(date, [item]);
    else day.push(item);
  }
  return [...days.values()];
}

/** Parts in a line with a middle dot between them; parts that are empty are left out. */
export function joinWithDots(parts: readonly (readonly ElementContent[] | string)[]): ElementContent[] {
  const trees = parts.filter((part) => part.length > 0).map(toTree);
  return trees.flatMap((tree, index) => (index === 0 ? tree : [textNode(' · '), ...tree]));
}

function toTree(part: readonly ElementContent[] | string): ElementContent[] {
  return typeof part === 'string' ? [textNode(part)] : [...part];
}

/** A text as a node of a tree. */
export function textNode(value: string): ElementContent {
  return { type: 'text', value };
}
