import { type Checked, checkDocument } from './check-value.ts';
import type { SourcePlace } from './diagnostic.ts';
import { lessonHeadSchema } from './schemas/lesson-head.ts';
import type { LessonHead } from './types.ts';
import { parseYaml } from './yaml-document.ts';

/**
 * Parses and checks the front matter of a lesson.
 * @param text What stands between the two lines of dashes.
 * @param start The place of its first character in the lesson's file.
 */
export function parseLessonHead(text: string, start: SourcePlace): Checked<LessonHead> {
  return checkDocument(parseYaml(text, start), lessonHeadSchema, [], ({ begins, ...rest }) => ({
    ...rest,
    ...(begins !== undefined && { begins }),
  }));
}
