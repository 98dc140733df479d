import type { Diagnostic } from './diagnostic.ts';
import { checkOneOf, checkUnique, collect, createFault, describeNearMiss, type Located } from './faults.ts';
import { isMap } from './is-map.ts';
import { CHECK_WORDS, MOST_MARKS } from './question-words.ts';
import { describeFound, describePath, quote } from './wording.ts';
import type { YamlDocument } from './yaml-document.ts';

/** Keys one of which says how a question is answered. */
const FORMS = ['options', 'answers', 'order', 'pairs', 'rubric', 'draw'] as const;

/** Keys that go with some of the forms only. */
const COMPANIONS = {
  forgive: ['answers'],
  headings: ['pairs'],
  lines: ['rubric'],
  check: ['options', 'answers', 'order', 'pairs'],
} as const satisfies Readonly<Record<string, readonly (typeof FORMS)[number][]>>;

/** What the schema of a questions file cannot say. */
export function* checkBankQuestions(document: YamlDocument): Generator<Diagnostic> {
  yield* checkOneOf(document, ['questions', '*'], FORMS);
  for (const question of collect(document.value, ['questions', '*'])) {
    const key = String(question.path.at(-1));
    yield* checkUnique(document, 'option', ['questions', key, 'options', '*', 'text']);
    yield* checkUnique(document, 'answer', ['questions', key, 'answers', '*']);
    yield* checkUnique(document, 'entry', ['questions', key, 'order', '*']);
    yield* checkUnique(document, 'left side', ['questions', key, 'pairs', '*', 'left']);
    yield* checkUnique(document, 'right side', ['questions', key, 'pairs', '*', 'right']);
    yield* checkCompanions(document, question);
    yield* checkOptions(document, key);
    yield* checkRubric(document, key);
    yield* checkCheck(document, key);
  }
}

function* checkCompanions(document: YamlDocument, { path, value }: Located): Generator<Diagnostic> {
  if (!isMap(value)) return;
  for (const [key, owners] of Object.entries(COMPANIONS)) {
    if (!Object.hasOwn(value, key) || owners.some((owner) => Object.hasOwn(value, owner))) continue;
    const where = [...path, key];
    const expected = owners.map(quote).join(' or ');
    const message = `${describePath(where)} is found without ${expected}; take it out, or add what it goes with.`;
    yield createFault(document, where, { rule: 'wrong-value', message, found: key, expected, part: 'key' });
  }
  if (Object.hasOwn(value, 'pairs') && !Object.hasOwn(value, 'headings')) {
    const message = `${describePath([...path, 'headings'])} is missing; expected what stands over the two sides of the pairs; add it.`;
    yield createFault(document, path, { rule: 'missing-key', message, expected: 'headings', part: 'key' });
  }
}

function* checkOptions(document: YamlDocument, key: string): Generator<Diagnostic> {
  const [options] = collect(document.value, ['questions', key, 'options']);
  if (options === undefined || !Array.isArray(options.value)) return;
  const rights = [...collect(options.value, ['*', 'right'])];
  // A `right` that is no yes or no has its own error.
  if (rights.every(({ value }) => value === false)) {
    const message = `${describePath(options.path)}: found no right option, expected one or more with \`right: true\`; mark it.`;
    yield createFault(document, options.path, { rule: 'missing-key', message, expected: 'right: true', part: 'key' });
  }
  for (const { path, value } of collect(document.value, ['questions', key, 'options', '*'])) {
    if (!isMap(value) || value['right'] !== true || !Object.hasOwn(value, 'means')) continue;
    const where = [...path, 'means'];
    const message = `${describePath(where)} is found at a right option, expected at wrong ones, to say what it means to choose them; put these words in \`working\`.`;
    yield createFault(document, where, { rule: 'wrong-value', message, part: 'key' });
  }
}

function* checkRubric(document: YamlDocument, key: string): Generator<Diagnostic> {
  const rows = [...collect(document.value, ['questions', key, 'rubric', '*', 'marks'])];
  for (const [index, { path, value }] of rows.entries()) {
    // What is no number of marks at all has its own error.
    if (typeof value !== 'number' || value > MOST_MARKS) continue;
    const before = rows[index - 1]?.value;
    if (index === 0 ? value > 0 : typeof before !== 'number' || value < before) continue;
    const expected = index === 0 ? '1 mark or more for the best answer' : 'fewer marks than in the line before';
    const message = `${describePath(path)}: found ${describeFound(value)}, expected ${expected}; mend the number or the order.`;
    yield createFault(document, path, { rule: 'wrong-value', message, found: String(value), expected });
  }
  const [marks] = collect(document.value, ['questions', key, 'marks']);
  const most = rows[0]?.value;
  if (marks === undefined || most === undefined || marks.value === most || typeof most !== 'number') return;
  const message = `${describePath(marks.path)}: found ${describeFound(marks.value)}, expected ${quote(String(most))}, the most that the rubric gives; take it out, or mend one of them.`;
  yield createFault(document, marks.path, { rule: 'wrong-value', message, expected: String(most) });
}

function* checkCheck(document: YamlDocument, key: string): Generator<Diagnostic> {
  for (const { path, value } of collect(document.value, ['questions', key, 'check'])) {
    if (typeof value !== 'string') continue;
    const [word = ''] = value.trim().split(/\s+/);
    if (word === '' || CHECK_WORDS.some((known) => known === word)) continue;
    const message = `${describePath(path)}: ${quote(word)} is not known${describeNearMiss(word, CHECK_WORDS)}`;
    yield createFault(document, path, { rule: 'wrong-value', message, found: word });
  }
}
