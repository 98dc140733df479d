import type { Blockquote, ListItem, Nodes, RootContent } from 'mdast';
import type { WrittenOption, WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import type { QuestionItem } from './question-item.ts';
import { quoteStart } from './quote-start.ts';
import { readCommon } from './read-common.ts';
import { renderText } from './render-text.ts';
import { reportQuestion } from './report-question.ts';

/** A task list: its boxes say which options are right. A quotation under a wrong option is for the key alone. */
export function readChoice(item: QuestionItem, context: ResolveContext): WrittenSource[] {
  const options = item.taskLists.flatMap(({ children }) => children);
  const faults = [
    ...options.map((option) => reportUnboxed(option, context)),
    ...options.map((option) => reportReasons(option, context)),
    reportLooseReasons(item, context),
  ];
  if (faults.includes(true)) return [];
  const common = readCommon(item, item.taskLists, context);
  return [{ kind: 'choice', ...common, options: options.map((option) => readOption(option, context)) }];
}

/** The quotations are taken out before anything is rendered: no learner's tree ever holds them. */
function readOption(option: ListItem, context: ResolveContext): WrittenOption {
  const words = option.children.filter((node) => !isQuotation(node));
  const content = renderText(words, context);
  if (option.checked === true) return { content, right: true };
  const reasons = option.children.filter(isQuotation).flatMap(({ children }) => children);
  return { content, right: false, ...(reasons.length === 0 ? {} : { means: renderText(reasons, context) }) };
}

/** Like a right box that is written wrong, one left out would pass for a wrong option. */
function reportUnboxed(option: ListItem, context: ResolveContext): boolean {
  if (typeof option.checked === 'boolean') return false;
  const words = quoteStart([option]);
  // The check of syntax has reported boxes such as `[ x]`.
  if (/^`\[ ?[xX]? ?\]/.test(words)) return true;
  const expected = '`[x]` before a right option and `[ ]` before a wrong one';
  reportQuestion(context, context.placeOf(option), `the option ${words} without a box`, expected, 'write the box');
  return true;
}

/** Whatever is meant for the key and would come out on the paper, or nowhere. */
function reportReasons(option: ListItem, context: ResolveContext): boolean {
  const words = option.children.filter((node) => !isQuotation(node));
  const fault = findReasonFault(option, words);
  if (fault === undefined) return false;
  const [node, ...message] = fault;
  reportQuestion(context, context.placeOf(node), ...message);
  return true;
}

type ReasonFault = readonly [node: RootContent, found: string, expected: string, advice: string];

function findReasonFault(option: ListItem, words: readonly RootContent[]): ReasonFault | undefined {
  const reasons = option.children.filter(isQuotation);
  const [reason] = reasons;
  if (reason !== undefined && option.checked === true) {
    const found = `a quotation under the right option ${quoteStart(words)}`;
    const expected = 'quotations under wrong options, which say what it means to choose them';
    return [reason, found, expected, 'put these words in `working` of `::answer`'];
  }
  const picture = findInside(reasons, isPicture);
  if (picture !== undefined) {
    const expected = 'words: pictures of a quiz go to the learners';
    return [picture, 'a picture in a quotation under an option', expected, 'take it out'];
  }
  const stray = findInside(words, (node) => isQuotation(node) || hasSunkenMark(node));
  if (stray === undefined) return undefined;
  const found = `a \`>\` in the option ${quoteStart(words)} that learners would see`;
  return [stray, found, 'it on a line of its own under the option', ADVICE];
}

const ADVICE = 'indent its `>` by two spaces more than the dash of the option, no less and no more';

/** A quotation beside the options was most likely meant to stand under one. */
function reportLooseReasons({ nodes, taskLists }: QuestionItem, context: ResolveContext): boolean {
  const [first] = taskLists;
  const after = nodes.slice(first === undefined ? 0 : nodes.indexOf(first)).filter((node) => !isOneOf(taskLists, node));
  const loose = after.flatMap((node) => findInside([node], isQuotation) ?? []);
  for (const quotation of loose) {
    const found = `the quotation ${quoteStart([quotation])} after options`;
    const expected = 'it under a wrong option, or before the options if learners may read it';
    reportQuestion(context, context.placeOf(quotation), found, expected, ADVICE);
  }
  return loose.length > 0;
}

function isOneOf(lists: QuestionItem['taskLists'], node: RootContent): boolean {
  return lists.some((list) => list === node);
}

function isQuotation(node: Nodes): node is Blockquote {
  return node.type === 'blockquote';
}

function isPicture({ type }: Nodes): boolean {
  return type === 'image' || type === 'imageReference';
}

/** Too far indented, a line with `>` goes on with the text before it; after an empty line it is code. */
function hasSunkenMark(node: Nodes): boolean {
  if (node.type === 'text') return /[\r\n]\s*(?:[-*+]\s+)?>/.test(node.value);
  if (node.type === 'code') return BEGINS_WITH_MARK.test(node.value);
  if (!('children' in node)) return false;
  return node.children.some((child, index) => {
    const beginsLine = node.children[index - 1]?.type === 'break';
    return beginsLine && child.type === 'text' && BEGINS_WITH_MARK.test(child.value);
  });
}

const BEGINS_WITH_MARK = /^\s*(?:[-*+]\s+)?>/;

function findInside(nodes: readonly RootContent[], is: (node: RootContent) => boolean): RootContent | undefined {
  for (const node of nodes) {
    if (is(node)) return node;
    const found = 'children' in node ? findInside(node.children, is) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}
