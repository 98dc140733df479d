import type { RootContent } from 'mdast';
import type { ResolveContext } from '../definition.ts';
import { reportQuestion } from './report-question.ts';

const STRAY_ADVICE = {
  answer: ['it in a question, after its text and options', 'move it, and indent it as far as the text of its question'],
  question: ['it by itself between the questions', 'move it out, and begin its line without spaces'],
} as const;

/** Reports each `::answer` and `::question` among the nodes and in them: nobody would read them there. */
export function reportStray(nodes: readonly RootContent[], context: ResolveContext): boolean {
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
