import type { ListItem } from 'mdast';
import type { WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import { checkAnswer } from './check-answer.ts';
import { type FormName, findForm } from './find-form.ts';
import { type QuestionItem, readQuestionItem } from './question-item.ts';
import { readChoice } from './read-choice.ts';
import { readDrawing } from './read-drawing.ts';
import { readMatch } from './read-match.ts';
import { readOpen } from './read-open.ts';
import { readOrder } from './read-order.ts';
import { readShort } from './read-short.ts';
import { reportStray } from './report-stray.ts';
import { suggestCheck } from './suggest-check.ts';
import { readWrittenValue } from './written-value.ts';

const READERS: Readonly<Record<FormName, (item: QuestionItem, context: ResolveContext) => WrittenSource[]>> = {
  choice: readChoice,
  short: readShort,
  order: readOrder,
  match: readMatch,
  open: readOpen,
  draw: readDrawing,
};

/**
 * A numbered item: its text is the question; a task list in it, a numbered list, a table of two columns or `::answer`
 * what is to be answered. Its right answer is held against the calendar where `check` says so. None where something was
 * wrong, which is then reported.
 */
export function readHandwritten(node: ListItem, context: ResolveContext): WrittenSource[] {
  const item = readQuestionItem(node, context);
  if (item === undefined || reportStray(item.nodes, context)) return [];
  const form = findForm(item, context);
  if (form === undefined) return [];
  const sources = READERS[form](item, context);
  const check = item.answer && readWrittenValue(item.answer.written, 'check');
  for (const source of sources) {
    if (check === undefined) suggestCheck(source, 'lesson', context);
    else checkAnswer(source, check, context);
  }
  return sources;
}
