import type { WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';
import type { QuestionItem } from './question-item.ts';
import { readCommon } from './read-common.ts';
import { renderText } from './render-text.ts';
import { reportQuestion } from './report-question.ts';

/** A numbered list, written in the right order. */
export function readOrder(item: QuestionItem, context: ResolveContext): WrittenSource[] {
  const [list] = item.numberedLists;
  if (list === undefined) return [];
  const empty = list.children.filter(({ children }) => children.length === 0);
  for (const each of empty) {
    reportQuestion(context, context.placeOf(each), 'a number without words', 'something to put in order', 'write it');
  }
  if (empty.length > 0) return [];
  const items = list.children.map(({ children }) => renderText(children, context));
  return [{ kind: 'order', ...readCommon(item, [list], context), items }];
}
