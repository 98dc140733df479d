import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { AnswerSpace, LetteredContent } from '../../quiz/model.ts';
import { arrangeLettered, nameArrangement } from './arrange-lettered.ts';
import { renderEmptyDisc } from './empty-disc.ts';
import { renderLetterBox, renderUnseen } from './letter-box.ts';
import { renderMatchSpace } from './match-space.ts';

/** Where a group answers a question on paper. Nothing in it tells one option from another but its letter and its words. */
export function renderAnswerSpace(space: AnswerSpace, labels: Labels): Element[] {
  switch (space.kind) {
    case 'options':
      return [renderOptions(space.options)];
    case 'line':
      return [renderLine(space.unit, labels)];
    case 'order':
      return [renderItems(space.items), renderOrderBoxes(space.items.length, labels)];
    case 'match':
      return [renderMatchSpace(space, labels)];
    case 'lines':
      return [renderLines(space.lines, labels)];
    case 'disc':
      return [renderEmptyDisc(labels)];
  }
}

function renderOptions(options: readonly LetteredContent[]): Element {
  return h(
    'ul',
    { className: ['options', 'plain-list', ...nameArrangement(arrangeLettered(options))] },
    options.map(({ letter, content }) =>
      h('li', [h('span', { className: ['tick-box'] }), ...renderLettered(letter, content)]),
    ),
  );
}

function renderItems(items: readonly LetteredContent[]): Element {
  return h(
    'ul',
    { className: ['options', 'lettered', 'plain-list', ...nameArrangement(arrangeLettered(items))] },
    items.map(({ letter, content }) => h('li', renderLettered(letter, content))),
  );
}

function renderLettered(letter: string, content: ElementContent[]): Element[] {
  return [h('span', { className: ['letter'] }, `${letter} `), h('div', { className: ['option'] }, content)];
}

/** As many boxes as there are letters to write, in a row that says where it begins. */
function renderOrderBoxes(count: number, labels: Labels): Element {
  return h('p', { className: ['order-boxes'] }, [
    h('span', { className: ['order-end'] }, labels.text('order-first')),
    ' ',
    ...Array.from({ length: count }, () => renderLetterBox(labels)),
    ' ',
    h('span', { className: ['order-end'] }, labels.text('order-last')),
  ]);
}

function renderLine(unit: string | undefined, labels: Labels): Element {
  const after = unit === undefined ? [] : [' ', h('span', { className: ['unit'] }, unit)];
  return h('p', { className: ['answer-line'] }, [
    renderUnseen(labels.text('write-here')),
    h('span', { className: unit === undefined ? ['write-line'] : ['write-line', 'short-line'] }),
    ...after,
  ]);
}

function renderLines(lines: number, labels: Labels): Element {
  return h('p', { className: ['answer-lines'] }, [
    renderUnseen(labels.text('write-here')),
    ...Array.from({ length: lines }, () => h('span', { className: ['write-line', 'whole-line'] })),
  ]);
}
