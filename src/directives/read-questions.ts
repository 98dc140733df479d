import type { ElementContent } from 'hast';
import type { List, ListItem, RootContent } from 'mdast';
import { toString as readPlainText } from 'mdast-util-to-string';
import type { SourcePlace } from '../content/diagnostic.ts';
import { findNearMiss } from '../content/near-miss.ts';
import type { BankQuestion } from '../content/types.ts';
import type { ComputedKind, QuestionSource } from '../quiz/model.ts';
import type { CheckedValues, ResolveContext, WrittenDirective } from './definition.ts';

/** What stands between the fences of a group quiz. */
interface QuizText {
  /** Text before the first question. */
  readonly introduction: ElementContent[];
  readonly sources: QuestionSource[];
}

/** Reads the questions of a group quiz in order; whatever is neither question nor introduction is reported. */
export function readQuestions(quiz: WrittenDirective, context: ResolveContext): QuizText {
  const introduction: RootContent[] = [];
  const sources: QuestionSource[] = [];
  let asked = false;
  for (const node of quiz.children) {
    if (node.type === 'list' && node.ordered === true) {
      asked = true;
      sources.push(...node.children.flatMap((item) => readHandwritten(item, context)));
    } else if (node.type === 'leafDirective' || node.type === 'containerDirective') {
      asked = true;
      sources.push(...readAsked(node, context));
    } else if (asked && node.type !== 'thematicBreak') {
      reportQuestion(
        context,
        context.placeOf(node),
        'text after the first question',
        'questions only',
        'move it above the first question, or into a question',
      );
    } else {
      introduction.push(node);
    }
  }
  if (!asked)
    reportQuestion(
      context,
      quiz.place,
      'a group quiz without a question',
      'a numbered list of questions, or `::question{ask=…}`',
      'write a question',
    );
  return { introduction: context.renderPlain(introduction), sources };
}

function reportQuestion(context: ResolveContext, place: SourcePlace, found: string, expected: string, advice: string) {
  context.report({
    rule: 'quiz-question',
    severity: 'error',
    place,
    message: `Found ${found}; expected ${expected}; ${advice}`,
    found,
    expected,
  });
}

/** A numbered item: its text is the question; a task list in it the options; `::answer` the rest. */
function readHandwritten(item: ListItem, context: ResolveContext): QuestionSource[] {
  const place = context.placeOf(item);
  const prompt: RootContent[] = [];
  const options: ListItem[] = [];
  let answer: { written: WrittenDirective; values: CheckedValues } | undefined;
  for (const node of item.children) {
    if (isTaskList(node)) options.push(...node.children);
    else if (node.type === 'leafDirective' && node.name === 'answer') {
      const read = context.readDirective(node);
      if (read === undefined) return [];
      if (answer !== undefined) {
        reportQuestion(
          context,
          read.written.place,
          'a second `::answer` in one question',
          'one',
          'put other spellings in `accept`',
        );
        return [];
      }
      answer = read;
    } else prompt.push(node);
  }
  const common = { place, prompt: context.renderPlain(unwrapOnly(prompt)), ...readMarks(answer?.values) };
  const label = answer?.written.label ?? '';
  if (options.length > 0 && label === '') {
    return [
      {
        kind: 'choice',
        ...common,
        options: options.map((option) => ({
          content: context.renderPlain(unwrapOnly(option.children)),
          right: option.checked === true,
        })),
      },
    ];
  }
  if (options.length === 0 && label !== '') {
    return [{ kind: 'short', ...common, answers: [label, ...readAccepted(answer?.values)] }];
  }
  const question = readPlainText(item).slice(0, 40).trim();
  reportQuestion(
    context,
    place,
    options.length > 0 ? 'a question with options and `::answer[…]`' : `the question \`${question}\` without an answer`,
    'a task list with `[x]` at the right options, or `::answer[…]`',
    options.length > 0 ? 'keep one of them' : 'add one of them, indented under the question',
  );
  return [];
}

function isTaskList(node: RootContent): node is List {
  return node.type === 'list' && node.children.some((item) => typeof item.checked === 'boolean');
}

/** A question of one paragraph is a line of text, not a paragraph. */
function unwrapOnly(nodes: readonly RootContent[]): readonly RootContent[] {
  const [only] = nodes;
  return nodes.length === 1 && only?.type === 'paragraph' ? only.children : nodes;
}

function readMarks(values: CheckedValues | undefined): { marks?: number; working?: string } {
  const { marks, working } = values ?? {};
  return {
    ...(typeof marks === 'number' ? { marks } : {}),
    ...(typeof working === 'string' ? { working } : {}),
  };
}

function readAccepted(values: CheckedValues | undefined): string[] {
  return String(values?.['accept'] ?? '')
    .split(';')
    .map((spelling) => spelling.trim())
    .filter((spelling) => spelling !== '');
}

function readAsked(node: RootContent, context: ResolveContext): QuestionSource[] {
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
    context.report({
      rule: 'unknown-reference',
      severity: 'error',
      place: written.attributePlace('use'),
      message: `\`${use}\` is not a question of the questions files; expected one of ${known.map((key) => `\`${key}\``).join(', ') || 'none, there is no questions file'}${near === undefined ? '' : `; did you mean \`${near}\`?`}`,
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
