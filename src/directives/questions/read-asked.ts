import type { RootContent } from 'mdast';
import type { SourcePlace } from '../../content/diagnostic.ts';
import { findNearMiss } from '../../content/near-miss.ts';
import type { BankQuestion } from '../../content/types.ts';
import type { ComputedKind, QuestionSource } from '../../quiz/model.ts';
import type { ResolveContext, WrittenDirective } from '../definition.ts';
import { readMarks } from './read-marks.ts';
import { reportQuestion } from './report-question.ts';

/** A `::question`: a computed one, or one from a questions file. */
export function readAsked(node: RootContent, context: ResolveContext): QuestionSource[] {
  const read = context.readDirective(node);
  if (read === undefined || read.written.name !== 'question') return [];
  const { written, values } = read;
  const { ask, use } = values;
  const marks = readMarks(values);
  if ((ask === undefined) === (use === undefined)) {
    reportQuestion(
      context,
      written.place,
      ask === undefined ? '`::question` without `ask` or `use`' : '`::question` with both `ask` and `use`',
      'one of them',
      'write `::question{ask=night-of-date}`',
    );
    return [];
  }
  if (ask !== undefined) {
    // The attribute's schema admits the computed kinds only.
    return [{ kind: 'computed', place: written.place, ask: ask as ComputedKind, ...marks }];
  }
  return readFromBank(String(use), written, marks, context);
}

function readFromBank(
  use: string,
  written: WrittenDirective,
  marks: { marks?: number },
  context: ResolveContext,
): QuestionSource[] {
  const slash = use.indexOf('/');
  const bank = context.banks.get(use.slice(0, Math.max(slash, 0)));
  const found = bank?.questions[use.slice(slash + 1)];
  if (found === undefined) {
    const known = [...context.banks.values()].flatMap(({ id, questions }) =>
      Object.keys(questions).map((key) => `${id}/${key}`),
    );
    const near = findNearMiss(use, known);
    // Only the files that a lesson of the week names are open.
    const expected =
      known.length > 0
        ? `one of ${known.map((key) => `\`${key}\``).join(', ')}`
        : 'the name of a questions file, `/`, and a question of that file';
    context.report({
      rule: 'unknown-reference',
      severity: 'error',
      place: written.attributePlace('use'),
      message: `\`${use}\` is not a question of the questions files; expected ${expected}; ${near === undefined ? 'mend the name of the file or of the question' : `did you mean \`${near}\`?`}`,
      found: use,
    });
    return [];
  }
  return [convertBankQuestion(found, written.place, marks)];
}

function convertBankQuestion(
  question: BankQuestion,
  place: SourcePlace,
  { marks = question.marks }: { marks?: number | undefined },
): QuestionSource {
  const common = {
    place,
    prompt: [{ type: 'text' as const, value: question.ask }],
    ...(marks === undefined ? {} : { marks }),
    ...(question.working === undefined ? {} : { working: question.working }),
  };
  if (question.options === undefined) return { kind: 'short', ...common, answers: question.answers ?? [] };
  return {
    kind: 'choice',
    ...common,
    options: question.options.map(({ text, right }) => ({ content: [{ type: 'text' as const, value: text }], right })),
  };
}
