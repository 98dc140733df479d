import type { EducationalAudience, LearningResource, WithContext } from 'schema-dts';
import type { ResolvedLesson } from '../../lesson/model.ts';
import { printData } from '../print-data.ts';
import { listPlacedLessons, type PageContext, type PlacedLesson } from './page-context.ts';

/**
 * The pack as a schema.org LearningResource in JSON-LD, so that catalogues find it by level, language, time and what it
 * teaches. Only what the content says: no author and no licence, since a week names none. For the teacher's part alone.
 * @returns Text that may stand in a `script` element as it is.
 */
export function describeLearningResource(context: PageContext): string {
  return printData(computeLearningResource(context));
}

function computeLearningResource(context: PageContext): WithContext<LearningResource> {
  const { plan, school, calendar, labels, lessons } = context.week;
  const dates = lessons.map(({ tonight }) => tonight.date);
  const [first, last] = [dates[0], dates.at(-1)];
  return {
    '@context': 'https://schema.org',
    '@type': 'LearningResource',
    name: plan.title,
    description: labels.text('pack-described', { calendar: calendar.title, audience: plan.for }),
    inLanguage: [...new Set([school.language, labels.language])],
    learningResourceType: listTypes(lessons),
    educationalLevel: plan.for,
    audience: listAudiences(plan.for),
    timeRequired: renderDuration(lessons.reduce((sum, { head }) => sum + head.minutes, 0)),
    teaches: [...new Set(lessons.flatMap(({ head }) => head.intentions))],
    ...(first === undefined ? {} : { temporalCoverage: first === last ? first : `${first}/${last}` }),
    // The lessons show the sky of this place; the calendar is the knowledge of its keeper.
    contentLocation: { '@type': 'School', name: school.name },
    about: { '@type': 'Thing', name: calendar.title },
    creditText: calendar.keeper,
    hasPart: listPlacedLessons(context).map((placed, index) => describeLesson(placed, index + 1)),
  };
}

/** The page of a day, by its path from the start page. */
function describeLesson({ lesson, paths }: PlacedLesson, position: number): LearningResource {
  const { head, tonight } = lesson;
  return {
    '@type': 'LearningResource',
    name: head.title,
    url: paths.page,
    position,
    learningResourceType: 'lesson plan',
    timeRequired: renderDuration(head.minutes),
    temporalCoverage: tonight.date,
    teaches: [...head.intentions],
  };
}

/** Values as schema.org's own examples write them. */
function listTypes(lessons: readonly ResolvedLesson[]): string[] {
  const has = (part: 'handouts' | 'quizzes') => lessons.some((lesson) => lesson[part].length > 0);
  return ['lesson plan', ...(has('handouts') ? ['handout'] : []), ...(has('quizzes') ? ['quiz'] : [])];
}

function listAudiences(learners: string): EducationalAudience[] {
  return [
    { '@type': 'EducationalAudience', educationalRole: 'teacher' },
    { '@type': 'EducationalAudience', educationalRole: 'student', audienceType: learners },
  ];
}

/** A duration of ISO 8601, in hours and minutes. @param minutes A whole number, not negative. */
function renderDuration(minutes: number): string {
  const hours = Math.floor(minutes / 60);
  const rest = minutes - 60 * hours;
  return `PT${hours === 0 ? '' : `${hours}H`}${rest === 0 && hours > 0 ? '' : `${rest}M`}`;
}
