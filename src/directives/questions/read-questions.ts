import type { ElementContent } from 'hast';
import type { RootContent } from 'mdast';
import type { QuestionSource } from '../../quiz/model.ts';
import type { ResolveContext, WrittenDirective } from '../definition.ts';
import { isUnseen } from './question-item.ts';
import { readAsked } from './read-asked.ts';
import { readHandwritten } from './read-handwritten.ts';
import { reportQuestion } from './report-question.ts';
import { reportStray } from './report-stray.ts';

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

function isAsked(node: RootContent): boolean {
  return (node.type === 'leafDirective' || node.type === 'containerDirective') && node.name === 'question';
}
