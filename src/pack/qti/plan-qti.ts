import type { ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';
import type { PackFile, Sha256, Zip } from '../pack-plan.ts';
import { nameQuiz } from './qti-names.ts';
import { renderQtiPackage } from './qti-package.ts';

/** Folder of a pack that holds quizzes for assessment tools. It is the teacher's: the answers are in them. */
export const QTI_FOLDER = 'qti';

/** What quizzes are packed with. */
export interface QtiTools {
  readonly sha256: Sha256;
  readonly zip: Zip;
}

/**
 * Every quiz of a week as a package of QTI 3.0 (1EdTech), for the school's assessment tool: an archive a quiz.
 * @param pictures Bytes of the week's picture files, by path from its folder.
 */
export function planQtiPackages(
  week: ResolvedWeek,
  pictures: ReadonlyMap<string, Uint8Array>,
  { sha256, zip }: QtiTools,
): PackFile[] {
  return week.lessons.flatMap((lesson) =>
    lesson.quizzes.map((quiz) => {
      const identifier = nameQuiz(week, lesson, quiz.number, sha256);
      const files = renderQtiPackage(quiz, {
        identifier,
        labels: week.labels,
        pictures: listPictureFiles(week, lesson, pictures),
      });
      return { path: `${QTI_FOLDER}/${lesson.stem}-quiz-${quiz.number}.zip`, content: zip(files) };
    }),
  );
}

/** What a question can show: pictures of its lesson, and those that stand for gestures. */
function listPictureFiles(
  { gestures }: ResolvedWeek,
  lesson: ResolvedLesson,
  pictures: ReadonlyMap<string, Uint8Array>,
): Map<string, Uint8Array> {
  const files = new Map<string, Uint8Array>();
  for (const { picture } of Object.values(gestures.gestures)) {
    if (picture !== undefined) files.set(picture.packName, picture.bytes);
  }
  for (const { path, name } of lesson.pictures) {
    const bytes = pictures.get(path);
    if (bytes !== undefined) files.set(name, bytes);
  }
  return files;
}
