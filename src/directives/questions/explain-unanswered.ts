import type { RootContent } from 'mdast';
import { toString as readPlainText } from 'mdast-util-to-string';
import { quote } from '../../content/wording.ts';
import type { ResolveContext } from '../definition.ts';
import type { QuestionItem } from './question-item.ts';
import { quoteStart } from './quote-start.ts';
import { PAIR } from './read-match.ts';
import { reportQuestion } from './report-question.ts';

const EXPECTED =
  'options with boxes (`[x]` at the right ones), a numbered list to put in order, a table of pairs, or `::answer` with an answer in square brackets, `rubric` or `draw`';

/** Reports a question in which nothing says how it is answered, and what was most likely meant. */
export function explainUnanswered({ place, nodes }: QuestionItem, context: ResolveContext): void {
  for (const node of nodes) {
    const meant = findMeant(node);
    if (meant === undefined) continue;
    reportQuestion(context, context.placeOf(node), ...meant);
    return;
  }
  const found = `the question ${quoteStart(nodes)} without an answer`;
  reportQuestion(context, place, found, EXPECTED, 'add one of them, indented as far as the words of the question');
}

type Meant = readonly [found: string, expected: string, advice: string];

function findMeant(node: RootContent): Meant | undefined {
  if (node.type === 'table') {
    const columns = node.children[0]?.children.length ?? 0;
    const found = `a table of ${columns} ${columns === 1 ? 'column' : 'columns'} and no answer`;
    const advice = 'mend the table, or add `::answer` if it is only to be read';
    return [found, `${PAIR} columns of things to match`, advice];
  }
  if (node.type === 'list') {
    const found = `the list ${quoteStart(node.children)} without boxes or numbers`;
    const expected = '`- [x]` and `- [ ]` before options, or `1.` and so on before things to put in order';
    return [found, expected, 'write them, or add `::answer` if the list is only to be read'];
  }
  if (node.type !== 'paragraph') return undefined;
  return findUnread(readPlainText(node).split(/\r\n|[\r\n]/));
}

/** A line of a paragraph that was meant to begin a list or a table. */
function findUnread([, ...lines]: readonly string[]): Meant | undefined {
  const item = lines.find((line) => /^\d{1,9}[.)]\s/.test(line));
  if (item !== undefined) {
    const found = `${quote(item)} as a part of the text before it`;
    return [found, 'a numbered list', 'leave an empty line before its first number'];
  }
  const row = lines.find((line) => /\|.*\S/.test(line));
  if (row === undefined) return undefined;
  const expected = 'a table: a row of headings, a row such as `| --- | --- |`, then the pairs';
  return [`${quote(row)}, which is not read as a table`, expected, 'mend its first two rows'];
}
