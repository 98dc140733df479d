import type { ElementContent } from 'hast';
import type { TableCell, TableRow } from 'mdast';
import type { WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import type { QuestionItem } from './question-item.ts';
import { quoteStart } from './quote-start.ts';
import { readCommon } from './read-common.ts';
import { renderText } from './render-text.ts';
import { reportQuestion } from './report-question.ts';

/** A table of two columns: its head the headings, its rows the pairs as they belong together. */
export function readMatch(item: QuestionItem, context: ResolveContext): WrittenSource[] {
  const table = item.tables.find(({ children: [head] }) => head?.children.length === PAIR);
  if (table === undefined) return [];
  const rows = table.children.map((row) => readRow(row, context));
  const [head, ...pairs] = rows.flatMap((row) => row ?? []);
  if (head === undefined || pairs.length < rows.length - 1) return [];
  const headings = [head.left, head.right] as const;
  return [{ kind: 'match', ...readCommon(item, [table], context), headings, pairs }];
}

/** Columns of a table of pairs. */
export const PAIR = 2;

interface RowOfTwo {
  readonly left: ElementContent[];
  readonly right: ElementContent[];
}

function readRow(row: TableRow, context: ResolveContext): RowOfTwo | undefined {
  const [left, right] = row.children;
  const filled = row.children.filter(({ children }) => children.length > 0).length;
  if (left !== undefined && right !== undefined && row.children.length === PAIR && filled === PAIR) {
    return { left: renderCell(left, context), right: renderCell(right, context) };
  }
  const found =
    row.children.length > PAIR
      ? `a row with ${row.children.length} cells, ${quoteStart(row.children)}`
      : `a row with an empty cell, ${quoteStart(row.children)}`;
  const advice = 'fill both cells, or take the row out; a `|` inside a cell is written `\\|`';
  reportQuestion(context, context.placeOf(row), found, 'two things that belong together in every row', advice);
  return undefined;
}

function renderCell({ children }: TableCell, context: ResolveContext): ElementContent[] {
  return renderText([{ type: 'paragraph', children: [...children] }], context);
}
