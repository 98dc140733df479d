import { checkBankQuestions } from './check-bank-questions.ts';
import { type Checked, checkDocument } from './check-value.ts';
import { computeFileId } from './file-id.ts';
import { questionsSchema, type WrittenBankQuestion, type WrittenQuestions } from './schemas/questions.ts';
import type { BankForm, BankQuestion, QuestionBank, SourceFile } from './types.ts';
import { parseYamlFile } from './yaml-document.ts';

/** Parses and checks a questions file. */
export function parseQuestionBank(file: SourceFile): Checked<QuestionBank> {
  const document = parseYamlFile(file);
  return checkDocument(document, questionsSchema, [checkBankQuestions], (written) =>
    convertBank(written, computeFileId(file.path)),
  );
}

function convertBank(written: WrittenQuestions, id: string): QuestionBank {
  // Without prototype, so that a question called `constructor` is found only when it is there.
  const questions: Record<string, BankQuestion> = Object.create(null);
  for (const [key, question] of Object.entries(written.questions)) questions[key] = convertQuestion(question);
  return { id, title: written.title, language: written.language, questions };
}

function convertQuestion(written: WrittenBankQuestion): BankQuestion {
  const { ask, marks, working, hint, check } = written;
  return {
    ask,
    ...(marks !== undefined && { marks }),
    ...(working !== undefined && { working }),
    ...(hint !== undefined && { hint }),
    ...(check !== undefined && { check }),
    ...convertForm(written),
  };
}

function convertForm(written: WrittenBankQuestion): BankForm {
  const { options, answers, forgive, order, headings, pairs, rubric, lines, draw } = written;
  if (options) return { kind: 'choice', options: options.map(({ right = false, ...rest }) => ({ right, ...rest })) };
  if (answers) return { kind: 'short', answers, ...(forgive && { forgive }) };
  if (order) return { kind: 'order', order };
  if (pairs && headings) return { kind: 'match', headings, pairs };
  if (rubric) {
    const rows = rubric.map(({ marks, for: words }) => ({ marks, words }));
    return { kind: 'open', rubric: rows, ...(lines !== undefined && { lines }) };
  }
  if (draw !== undefined) return { kind: 'draw', draw };
  throw new Error('A question of a questions file came through its checks without a form.');
}
