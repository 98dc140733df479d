import { nameInAscii } from '../../directives/page-names.ts';
import type { ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';
import type { Sha256 } from '../pack-plan.ts';

/** Name and place of something in a package. */
export interface PackagePart {
  /** A name of XML without a colon, in ASCII; unlike any other in the package and, in all likelihood, in a tool's bank. */
  readonly identifier: string;
  /** Path from the package's root. */
  readonly path: string;
}

/** Digits of a digest that are enough to tell a school's quizzes apart. */
const DIGEST_LENGTH = 12;

/**
 * The identifier of a quiz: the same whenever the same week is built, so that a tool that has it already takes it for a
 * new edition; another one where school, week, date or place in the week is another.
 */
export function nameQuiz(week: ResolvedWeek, lesson: ResolvedLesson, quizNumber: number, sha256: Sha256): string {
  const what = [week.school.id, week.plan.id, lesson.slug, lesson.tonight.date, quizNumber];
  return `quiz-${sha256.hex(JSON.stringify(what)).slice(0, DIGEST_LENGTH)}`;
}

/** A group's paper, which is a test of its own. @param place The paper's, from 1. */
export function namePaper(quiz: string, place: number, group: string): PackagePart {
  const words = nameInAscii(group);
  return { identifier: `${quiz}-p${place}`, path: `paper-${place}${words === '' ? '' : `-${words}`}.xml` };
}

/** A question of a paper, which is an item. @param place The paper's, from 1. @param number The question's, as on the paper. */
export function nameItem(quiz: string, place: number, number: number): PackagePart {
  return { identifier: `${quiz}-p${place}-q${number}`, path: `paper-${place}-question-${number}.xml` };
}

/** The identifier of a picture. @param path Its path, whose file name is unlike any other's. */
export function namePicture(quiz: string, path: string): string {
  return `${quiz}-${path.slice(path.lastIndexOf('/') + 1).replace(/\..*$/, '')}`;
}
