import type { ElementContent } from 'hast';
import type { List, ListItem, RootContent } from 'mdast';
import { toString as readPlainText } from 'mdast-util-to-string';
import type { SourcePlace } from '../../content/diagnostic.ts';
import type { QuestionSource } from '../../quiz/model.ts';
import type { CheckedValues, ResolveContext } from '../definition.ts';
import { readMarks } from './read-marks.ts';
import { reportQuestion } from './report-question.ts';
import { reportStray } from './report-stray.ts';

/** A numbered item: its text is the question; a task list in it the options; `::answer` the rest. */
export function readHandwritten(item: ListItem, context: ResolveContext): QuestionSource[] {
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

function readAccepted(values: CheckedValues | undefined): string[] {
  return String(values?.['accept'] ?? '')
    .split(';')
    .map((spelling) => spelling.trim())
    .filter((spelling) => spelling !== '');
}

/** Definitions of links and comments stand anywhere and show nothing; other HTML was reported. */
export function isUnseen({ type }: RootContent): boolean {
  return type === 'definition' || type === 'html';
}
