import { type Checked, checkDocument } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { checkOneOf, checkUnique, collect, createFault } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { questionsSchema, type WrittenQuestions } from './schemas/questions.ts';
import type { BankQuestion, QuestionBank, SourceFile } from './types.ts';
import { describePath } from './wording.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** Parses and checks a questions file. */
export function parseQuestionBank(file: SourceFile): Checked<QuestionBank> {
  const document = parseYamlFile(file);
  return checkDocument(document, questionsSchema, [checkKinds, checkAnswers], (written) =>
    convertBank(written, computeFileId(file.path)),
  );
}

function checkKinds(document: YamlDocument): Iterable<Diagnostic> {
  return checkOneOf(document, ['questions', '*'], ['options', 'answers']);
}

function* checkAnswers(document: YamlDocument): Generator<Diagnostic> {
  for (const { path } of collect(document.value, ['questions', '*'])) {
    const key = String(path.at(-1));
    yield* checkUnique(document, 'option', ['questions', key, 'options', '*', 'text']);
    yield* checkUnique(document, 'answer', ['questions', key, 'answers', '*']);
    const rights = [...collect(document.value, ['questions', key, 'options', '*', 'right'])];
    const [options] = collect(document.value, ['questions', key, 'options']);
    // A `right` that is no yes or no has its own error.
    if (options === undefined || !Array.isArray(options.value) || rights.some(({ value }) => value !== false)) continue;
    const message = `${describePath(options.path)}: found no right option, expected one or more with \`right: true\`; mark it.`;
    yield createFault(document, options.path, { rule: 'missing-key', message, expected: 'right: true', part: 'key' });
  }
}

function convertBank(written: WrittenQuestions, id: string): QuestionBank {
  // Without prototype, so that a question called `constructor` is found only when it is there.
  const questions: Record<string, BankQuestion> = Object.create(null);
  for (const [key, { options, ...rest }] of Object.entries(written.questions)) {
    const checked = options?.map(({ text, right = false }) => ({ text, right }));
    questions[key] = { ...rest, ...(checked && { options: checked }) };
  }
  return { id, title: written.title, language: written.language, questions };
}
