import { findNearMiss } from '../../content/near-miss.ts';
import { quote } from '../../content/wording.ts';
import type { WrittenSource } from '../../quiz/model.ts';
import type { CheckedValues, ResolveContext, WrittenDirective } from '../definition.ts';
import { checkAnswer } from './check-answer.ts';
import { convertBankQuestion } from './convert-bank-question.ts';
import { readGiven } from './read-common.ts';
import { suggestCheck } from './suggest-check.ts';

/** A question of a questions file, as a lesson uses it. What is wrong is reported where the lesson names it. */
export function readFromBank(
  use: string,
  written: WrittenDirective,
  values: CheckedValues,
  context: ResolveContext,
): WrittenSource[] {
  const slash = use.indexOf('/');
  const bank = context.banks.get(use.slice(0, Math.max(slash, 0)));
  const question = bank?.questions[use.slice(slash + 1)];
  if (question === undefined) {
    reportUnknown(use, written, context);
    return [];
  }
  const source = convertBankQuestion(question, { name: use, written, ...readGiven(values) }, context);
  if (source === undefined) return [];
  if (question.check === undefined) suggestCheck(source, 'file', context);
  else {
    const called = `${quote(`check: ${question.check}`)} of \`${use}\``;
    checkAnswer(source, { text: question.check, place: written.attributePlace('use'), called }, context);
  }
  return [source];
}

function reportUnknown(use: string, written: WrittenDirective, { banks, report }: ResolveContext): void {
  const known = [...banks.values()].flatMap(({ id, questions }) => Object.keys(questions).map((key) => `${id}/${key}`));
  const near = findNearMiss(use, known);
  // Only the files that a lesson of the week names are open.
  const expected =
    known.length > 0
      ? `one of ${known.map((key) => `\`${key}\``).join(', ')}`
      : 'the name of a questions file, `/`, and a question of that file';
  report({
    rule: 'unknown-reference',
    severity: 'error',
    place: written.attributePlace('use'),
    message: `\`${use}\` is not a question of the questions files; expected ${expected}; ${near === undefined ? 'mend the name of the file or of the question' : `did you mean \`${near}\`?`}`,
    found: use,
  });
}
