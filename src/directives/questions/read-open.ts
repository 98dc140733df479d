import { USUAL_LINES } from '../../content/question-words.ts';
import type { WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import { parseRubric } from './parse-rubric.ts';
import type { QuestionItem } from './question-item.ts';
import { readCommon } from './read-common.ts';
import { reportQuestion } from './report-question.ts';

/** `::answer{rubric=…}`: an open answer on lines, marked by a rubric whose best line is worth the question's marks. */
export function readOpen(item: QuestionItem, context: ResolveContext): WrittenSource[] {
  const { answer } = item;
  if (answer === undefined) return [];
  const rubric = parseRubric(String(answer.values['rubric']));
  if (!Array.isArray(rubric)) {
    const { found, expected, advice } = rubric;
    reportQuestion(context, answer.written.attributePlace('rubric'), found, expected, advice);
    return [];
  }
  const most = rubric[0]?.marks ?? 0;
  const common = readCommon(item, [], context);
  if (common.marks !== undefined && common.marks !== most) {
    const found = `\`marks=${common.marks}\` and a rubric that gives \`${most}\` at most`;
    const advice = 'take `marks` out, or mend one of them';
    reportQuestion(context, answer.written.attributePlace('marks'), found, 'the same number', advice);
    return [];
  }
  const lines = Number(answer.values['lines'] ?? USUAL_LINES);
  return [{ kind: 'open', ...common, lines, rubric }];
}
