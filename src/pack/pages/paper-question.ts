import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { AnswerSpace, LearnerOption, LearnerQuestion } from '../../quiz/model.ts';

/** A question with its marks at the edge and the space to answer in. The number is the list's own, hung in the margin. */
export function renderPaperQuestion(question: LearnerQuestion, labels: Labels): Element {
  return h('li', { value: question.number }, [
    h('div', { className: ['question'] }, [
      h('div', { className: ['ask'] }, [
        h('div', { className: ['prompt'] }, question.prompt),
        ...renderHowTo(question.space, labels),
      ]),
      h('p', { className: ['marks'] }, labels.count('marks', question.marks)),
      ...renderSpace(question.space, labels),
    ]),
  ]);
}

/** Stands in the question's last line, after its words. */
function renderHowTo(space: AnswerSpace, labels: Labels): ElementContent[] {
  if (space.kind !== 'options') return [];
  const words = labels.text(space.several ? 'tick-all-right' : 'tick-one');
  return [{ type: 'text', value: ' ' }, h('p', { className: ['how-to'] }, words)];
}

function renderSpace(space: AnswerSpace, labels: Labels): Element[] {
  if (space.kind === 'options') {
    return [h('ul', { className: ['options', 'plain-list'] }, space.options.map(renderOption))];
  }
  const unit = space.unit === undefined ? [] : [' ', h('span', { className: ['unit'] }, space.unit)];
  return [
    h('p', { className: ['answer-line'] }, [
      h('span', { className: ['visually-hidden'] }, labels.text('write-here')),
      h('span', { className: space.unit === undefined ? ['write-line'] : ['write-line', 'short-line'] }),
      ...unit,
    ]),
  ];
}

function renderOption({ letter, content }: LearnerOption): Element {
  return h('li', [
    h('span', { className: ['tick-box'] }),
    h('span', { className: ['letter'] }, `${letter} `),
    h('div', { className: ['option'] }, content),
  ]);
}
