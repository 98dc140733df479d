import { WEEK_DAYS } from '../content/civil-date.ts';
import type { WeekDay } from '../content/types.ts';

/** What a lesson of a week goes by. Both names are unique in the week. */
export interface LessonNames {
  /** Stands in anchors, in seeds and in the links that authors write; a second lesson of a day does not change the first's. */
  readonly slug: string;
  /** What the lesson's files are named after, so that a folder in order of name is in order of days and lessons. */
  readonly stem: string;
}

/**
 * Names the lessons of a week: `wednesday`, `3-wednesday`; where a day has several, the second is `wednesday-lesson-2`,
 * `3-wednesday-lesson-2`, and the file of the first says so too: some systems would else show it after the second.
 * @param days The day of each lesson, in order.
 */
export function nameLessons(days: readonly WeekDay[]): LessonNames[] {
  return days.map((day, index) => {
    const number = days.slice(0, index + 1).filter((each) => each === day).length;
    const count = days.filter((each) => each === day).length;
    // A word between: else `wednesday-2` and the name of its handout could be that of Wednesday's second handout.
    const slug = number === 1 ? day : `${day}-lesson-${number}`;
    const stem = `${WEEK_DAYS.indexOf(day) + 1}-${day}`;
    if (count === 1) return { slug, stem };
    return { slug, stem: `${stem}-lesson-${String(number).padStart(String(count).length, '0')}` };
  });
}

/**
 * Where links of authors to the pages of lessons lead: a page is meant by its slug, `wednesday.html`, and by its file's
 * name with or without the number of the day.
 */
export function listLessonPages(names: readonly LessonNames[]): Map<string, string> {
  const written = names.flatMap(({ slug, stem }) => [slug, stem, stem.slice(2)].map((each) => [each, stem] as const));
  return new Map(written.map(([each, stem]) => [`${each}.html`, `${stem}.html`]));
}
