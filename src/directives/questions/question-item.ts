import type { List, ListItem, RootContent, Table } from 'mdast';
import type { SourcePlace } from '../../content/diagnostic.ts';
import type { CheckedValues, ResolveContext, WrittenDirective } from '../definition.ts';
import { reportQuestion } from './report-question.ts';

/** The `::answer` of a question, as read. */
export interface WrittenAnswer {
  readonly written: WrittenDirective;
  readonly values: CheckedValues;
}

/** A numbered item of a group quiz, taken apart. What is no answer is what the question shows. */
export interface QuestionItem {
  readonly place: SourcePlace;
  /** All that stands in it, in order, but `::answer` and what nobody sees. */
  readonly nodes: readonly RootContent[];
  readonly taskLists: readonly List[];
  /** Numbered lists, without those with boxes. */
  readonly numberedLists: readonly List[];
  readonly tables: readonly Table[];
  readonly answer: WrittenAnswer | undefined;
}

/** Takes an item apart; undefined where its `::answer` could not be read, which is then reported. */
export function readQuestionItem(item: ListItem, context: ResolveContext): QuestionItem | undefined {
  const shown = item.children.filter((node) => !isUnseen(node));
  const answers = shown.filter(isAnswer);
  const nodes = shown.filter((node) => !isAnswer(node));
  const reads = answers.flatMap((node) => context.readDirective(node) ?? []);
  if (reads.length < answers.length) return undefined;
  const [answer, second] = reads;
  if (second !== undefined) {
    const advice = 'put other spellings in `accept`, and all attributes in one pair of braces';
    reportQuestion(context, second.written.place, 'a second `::answer` in one question', 'one', advice);
    return undefined;
  }
  const taskLists = nodes.filter(isTaskList);
  return {
    place: context.placeOf(item),
    nodes,
    taskLists,
    numberedLists: nodes.filter((node) => isNumberedList(node)),
    tables: nodes.filter((node) => node.type === 'table'),
    answer,
  };
}

/** In whatever form: one that is written with three colons was reported, and was meant as the answer all the same. */
function isAnswer(node: RootContent): boolean {
  return (node.type === 'leafDirective' || node.type === 'containerDirective') && node.name === 'answer';
}

function isTaskList(node: RootContent): node is List {
  return node.type === 'list' && node.children.some((item) => typeof item.checked === 'boolean');
}

function isNumberedList(node: RootContent): node is List {
  return node.type === 'list' && node.ordered === true && !isTaskList(node);
}

/** Definitions of links and comments stand anywhere and show nothing; other HTML was reported. */
export function isUnseen({ type }: RootContent): boolean {
  return type === 'definition' || type === 'html';
}
