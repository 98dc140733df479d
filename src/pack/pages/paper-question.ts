import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { AnswerSpace, LearnerQuestion } from '../../quiz/model.ts';
import { renderAnswerSpace } from './answer-space.ts';

/** A question with its marks at the edge and the space to answer in. The number is the list's own, hung in the margin. */
export function renderPaperQuestion(question: LearnerQuestion, labels: Labels): Element {
  return h('li', { value: question.number }, [
    h('div', { className: ['question'] }, [
      h('div', { className: ['ask'] }, [
        h('div', { className: ['prompt'] }, question.prompt),
        ...renderHowTo(question.space, labels),
      ]),
      h('p', { className: ['marks'] }, labels.count('marks', question.marks)),
      ...renderAnswerSpace(question.space, labels),
    ]),
  ]);
}

/** Stands in the question's last line, after its words. */
function renderHowTo(space: AnswerSpace, labels: Labels): ElementContent[] {
  const words = sayHow(space, labels);
  return words === undefined ? [] : [{ type: 'text', value: ' ' }, h('p', { className: ['how-to'] }, words)];
}

function sayHow(space: AnswerSpace, labels: Labels): string | undefined {
  switch (space.kind) {
    case 'options':
      return labels.text(space.several ? 'tick-all-right' : 'tick-one');
    case 'order':
      return labels.text('write-in-order');
    case 'match':
      return labels.text('write-pairs');
    case 'disc':
      return labels.text('draw-moon');
    default:
      return undefined;
  }
}
