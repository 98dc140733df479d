import type { Almanac } from '../calendar/almanac-types.ts';
import type { CivilDate } from '../calendar/rules.ts';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { OpenedSchool } from '../content/open-library.ts';
import type { LessonHead, QuestionBank, SourceFile, WeekDay, WeekPlan } from '../content/types.ts';
import { addMinutes } from '../directives/add-minutes.ts';
import type { LessonView } from '../directives/definition.ts';
import { GESTURES_PAGE, KEY_PAGE } from '../directives/page-names.ts';
import type { Timeline, TrackCut } from '../rhythm/timeline-types.ts';
import type { ResolvedWeek } from './model.ts';
import { type LessonNames, listLessonPages, nameLessons } from './name-lessons.ts';
import type { ParsedLesson } from './parse-lesson.ts';
import { type MediaPlan, planMedia } from './plan-media.ts';
import { type PreparedLesson, prepareLesson } from './prepare-lesson.ts';
import { renderLesson } from './render-lesson.ts';

/** A lesson's file, parsed, and its front matter, checked. */
export interface ReadLesson {
  readonly file: SourceFile;
  readonly parsed: ParsedLesson;
  readonly head: LessonHead;
}

/** What the lessons of a week are prepared against. */
export interface LessonsSetting extends OpenedSchool {
  readonly plan: WeekPlan;
  readonly almanac: Almanac;
  readonly dates: ReadonlyMap<WeekDay, CivilDate>;
  readonly banks: ReadonlyMap<string, QuestionBank>;
  /** Picture files, as paths from the week's folder. */
  readonly pictures: readonly string[];
}

/** Pages of every pack that a lesson may link to, beside its days. */
const FIXED_PAGES: readonly string[] = ['index.html', KEY_PAGE, 'score.html', GESTURES_PAGE, 'learners/index.html'];

/** Resolves the directives of a week's lessons. All faults are reported. @param lessons In order. */
export function prepareLessons(
  lessons: readonly ReadLesson[],
  { plan, school, dates, pictures, ...shared }: LessonsSetting,
  report: (diagnostic: Diagnostic) => void,
): PreparedLesson[] {
  const names = nameLessons(lessons.map(({ head }) => head.day));
  const targets = { pictures, pages: new Map([...FIXED_PAGES.map(toItself), ...listLessonPages(names)]) };
  const told = new Set<CivilDate>();
  return beginInTurn(lessons, school.classBegins).map(({ file, parsed, head }, index) => {
    const date = dates.get(head.day) ?? plan.begins;
    const lesson = { head, date, file: file.path, ...requireNames(names, index) };
    const setting = { ...shared, school, dates, weekId: plan.id, lesson, toldDates: told };
    const prepared = prepareLesson(parsed, setting, targets, report);
    for (const date of prepared.tells) told.add(date);
    return prepared;
  });
}

/** Writes the text of the lessons' pages: only when all are prepared is it known which tracks their runs share. */
export function renderLessons(
  lessons: readonly PreparedLesson[],
  { labels, calendar }: Pick<OpenedSchool, 'labels' | 'calendar'>,
): Pick<ResolvedWeek, 'lessons' | 'media'> {
  const { media, cuts } = planMedia(lessons);
  const view: LessonView = {
    labels,
    namesLanguage: calendar.language,
    ...(calendar.explainedIn === undefined ? {} : { explainedIn: calendar.explainedIn }),
    trackOf: (timeline) => requireCut(timeline, cuts),
  };
  return { lessons: lessons.map((lesson) => renderLesson(lesson, view)), media };
}

function requireCut(timeline: Timeline, cuts: MediaPlan['cuts']): TrackCut {
  const cut = cuts.get(timeline);
  if (cut === undefined) throw new Error('No track was planned for a run.');
  return cut;
}

function toItself(page: string): [string, string] {
  return [page, page];
}

function requireNames(names: readonly LessonNames[], index: number): LessonNames {
  const found = names[index];
  if (found === undefined) throw new Error(`Lesson ${index + 1} has no name.`);
  return found;
}

/** A later lesson of a day that does not say when it begins follows the one before it. */
function beginInTurn(lessons: readonly ReadLesson[], classBegins: string): ReadLesson[] {
  const ends = new Map<WeekDay, string>();
  return lessons.map((lesson) => {
    const { day, minutes } = lesson.head;
    const begins = lesson.head.begins ?? ends.get(day);
    ends.set(day, addMinutes(begins ?? classBegins, minutes));
    return begins === undefined ? lesson : { ...lesson, head: { ...lesson.head, begins } };
  });
}
