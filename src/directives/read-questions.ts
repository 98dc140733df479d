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
    if (isUnseen(node)) continue;
    if (node.type === 'list' && node.ordered === true) {
      asked = true;
      sources.push(...node.children.flatMap((item) => readHandwritten(item, context)));
    } else if (isAsked(node)) {
      asked = true;
      sources.push(...readAsked(node, context));
    } else if (reportStray([node], context)) {
      // It was meant as part of a question, and is no introduction either.
    } else if (asked && node.type !== 'thematicBreak') {
      reportQuestion(
        context,
        context.placeOf(node),
        'text after the first question',
        'questions only',
        'move it above the first question, or into a question',
      );
    } else introduction.push(node);
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

/** Definitions of links and comments stand anywhere and show nothing; other HTML was reported. */
function isUnseen({ type }: RootContent): boolean {
  return type === 'definition' || type === 'html';
}

function isAsked(node: RootContent): boolean {
  return (node.type === 'leafDirective' || node.type === 'containerDirective') && node.name === 'question';
}

const STRAY_ADVICE = {
  answer: ['it in a question, after its text and options', 'move it, and indent it as far as the text of its question'],
  question: ['it by itself between the questions', 'move it out, and begin its line without spaces'],
} as const;

/** Reports each `::answer` and `::question` among the nodes and in them: nobody would read them there. */
function reportStray(nodes: readonly RootContent[], context: ResolveContext): boolean {
  let found = false;
  for (const node of nodes) {
    const { written } = context.readDirective(node) ?? {};
    if (written?.name === 'answer' || written?.name === 'question') {
      found = true;
      const [expected, advice] = STRAY_ADVICE[written.name];
      reportQuestion(context, written.place, `\`::${written.name}\` in other text`, expected, advice);
    }
    if ('children' in node && reportStray(node.children, context)) found = true;
  }
  return found;
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
  const shown = item.children.filter((node) => !isUnseen(node));
  const answers = shown.filter((node) => node.type === 'leafDirective' && node.name === 'answer');
  const options = shown.flatMap((node) => (isTaskList(node) ? node.children : []));
  const prompt = shown.filter((node) => !isTaskList(node) && !answers.includes(node));
  const reads = answers.flatMap((node) => context.readDirective(node) ?? []);
  if (reads.length < answers.length) return [];
  const [answer, second] = reads;
  if (second !== undefined) {
    reportQuestion(
      context,
      second.written.place,
      'a second `::answer` in one question',
      'one',
      'put other spellings in `accept`',
    );
    return [];
  }
  if (reportStray([...prompt, ...options], context) || reportUnboxed(options, context)) return [];
  const common = { place, prompt: renderText(prompt, context), ...readMarks(answer?.values) };
  const label = answer?.written.label ?? '';
  if (options.length > 0 && label === '' && answer?.values['accept'] === undefined) {
    return [{ kind: 'choice', ...common, options: options.map((option) => readOption(option, context)) }];
  }
  if (options.length === 0 && label !== '') {
    return [{ kind: 'short', ...common, answers: [label, ...readAccepted(answer?.values)] }];
  }
  reportUnanswered(place, prompt, options.length > 0, label, context);
  return [];
}

function readOption(option: ListItem, context: ResolveContext) {
  return { content: renderText(option.children, context), right: option.checked === true };
}

/** Like a right box that is written wrong, one left out would pass for a wrong option. */
function reportUnboxed(options: readonly ListItem[], context: ResolveContext): boolean {
  const unboxed = options.filter((option) => typeof option.checked !== 'boolean');
  for (const option of unboxed) {
    const words = quoteStart([option]);
    // The check of syntax has reported boxes such as `[ x]`.
    if (/^`\[ ?[xX]? ?\]/.test(words)) continue;
    reportQuestion(
      context,
      context.placeOf(option),
      `the option ${words} without a box`,
      '`[x]` before a right option and `[ ]` before a wrong one',
      'write the box',
    );
  }
  return unboxed.length > 0;
}

function reportUnanswered(
  place: SourcePlace,
  prompt: readonly RootContent[],
  hasOptions: boolean,
  label: string,
  context: ResolveContext,
): void {
  const expected = 'a task list with `[x]` at the right options, or `::answer[…]`';
  if (!hasOptions) {
    const found = `the question ${quoteStart(prompt)} without an answer`;
    reportQuestion(context, place, found, expected, 'add one of them, indented under the question');
  } else {
    const found = label === '' ? '`accept`' : '`::answer[…]`';
    reportQuestion(context, place, `a question with options and ${found}`, expected, 'keep one of them');
  }
}

/** The first words of what an author wrote, between backticks. */
function quoteStart(nodes: readonly RootContent[]): string {
  const words = nodes.map((node) => readPlainText(node)).join(' ');
  return `\`${[...words.replace(/[\s`]+/g, ' ')].slice(0, 40).join('').trim()}\``;
}

function isTaskList(node: RootContent): node is List {
  return node.type === 'list' && node.children.some((item) => typeof item.checked === 'boolean');
}

/**
 * A question of one paragraph is a line of text, not a paragraph. It is unwrapped after rendering: words rendered one
 * by one would get white space between them.
 */
function renderText(nodes: readonly RootContent[], context: ResolveContext): ElementContent[] {
  const rendered = context.renderPlain(nodes);
  const [only] = rendered;
  if (nodes.length !== 1 || nodes[0]?.type !== 'paragraph' || only?.type !== 'element') return rendered;
  return only.children;
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
