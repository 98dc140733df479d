import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { ExpectedAnswer, KeyOption } from '../../quiz/model.ts';
import { holdsPicture } from './holds-picture.ts';
import { renderKeyLine } from './key-line.ts';

type ExpectedOf<Kind extends ExpectedAnswer['kind']> = Extract<ExpectedAnswer, { readonly kind: Kind }>;

/** What earns the marks of a question, in the form in which a group answers it. */
export function renderExpected(expected: ExpectedAnswer, labels: Labels): Element[] {
  switch (expected.kind) {
    case 'options':
      return [renderOptions(expected, labels)];
    case 'line':
      return renderKeyLine(expected, labels);
    case 'order':
      return [renderOrder(expected, labels)];
    case 'match':
      return [renderPairs(expected)];
    case 'lines':
      return [renderRubric(expected, labels)];
    case 'disc':
      return [renderDrawing(expected, labels)];
  }
}

/**
 * Every option as it stands on the paper: right ones stand out by a ring around the letter, wrong ones say what they
 * mean.
 */
function renderOptions({ options }: ExpectedOf<'options'>, labels: Labels): Element {
  return h(
    'ul',
    { className: ['key-options', 'plain-list', ...arrangeOptions(options)] },
    options.map((option) => renderOption(option, labels)),
  );
}

/** Where there is nothing to say of any they stand in a row; pictures are small, and stand two by two. */
function arrangeOptions(options: readonly KeyOption[]): string[] {
  if (options.every(({ means }) => means.length === 0)) return ['brief'];
  return options.some(({ content }) => holdsPicture(content)) ? ['pictures'] : [];
}

function renderOption({ letter, content, right, means }: KeyOption, labels: Labels): Element {
  const said = right ? [h('span', { className: ['visually-hidden'] }, ` ${labels.text('key-right-option')}`)] : [];
  return h('li', { className: right ? ['key-option', 'is-right'] : ['key-option'] }, [
    h('strong', { className: ['key-letter'] }, letter),
    ' ',
    h('div', { className: ['key-content'] }, [...content, ...said]),
    ...(means.length === 0 ? [] : [' ', h('span', { className: ['key-means'] }, means)]),
  ]);
}

/** The row of letters as the group ought to have written it, and what they stand for. */
function renderOrder({ items }: ExpectedOf<'order'>, labels: Labels): Element {
  return h('div', { className: ['key-order'] }, [
    h('p', [
      `${labels.text('key-in-order')} `,
      h('strong', { className: ['key-row-letters'] }, items.map(({ letter }) => letter).join(' ')),
    ]),
    h(
      'ol',
      { className: ['key-row', 'plain-list'] },
      items.map(({ content }) => h('li', [h('div', { className: ['key-content'] }, content)])),
    ),
  ]);
}

/** The letter for each number. Pictures are small, so that several pairs stand in a row. */
function renderPairs({ pairs }: ExpectedOf<'match'>): Element {
  const hasPictures = pairs.some(({ left, right }) => holdsPicture([...left, ...right.content]));
  return h(
    'ol',
    { className: ['key-pairs', 'plain-list', ...(hasPictures ? ['pictures'] : [])] },
    pairs.map(({ left, right }, index) =>
      h('li', [
        h('strong', [`${index + 1} `, h('span', { className: ['key-letter'] }, right.letter)]),
        ' ',
        h('div', { className: ['key-content'] }, left),
        ' ',
        h('div', { className: ['key-content', 'key-partner'] }, right.content),
      ]),
    ),
  );
}

function renderRubric({ rubric }: ExpectedOf<'lines'>, labels: Labels): Element {
  return h('table', { className: ['key-rubric'] }, [
    h(
      'tbody',
      rubric.map(({ marks, words }) =>
        h('tr', [h('th', { scope: 'row' }, labels.count('marks', marks)), h('td', words)]),
      ),
    ),
  ]);
}

function renderDrawing({ drawing, description }: ExpectedOf<'disc'>, labels: Labels): Element {
  return h('div', { className: ['key-drawing'] }, [
    ...drawing,
    h('div', [
      h('p', labels.text('key-like-this', { description })),
      h('p', { className: ['key-forgive'] }, labels.text('key-drawing-marks')),
    ]),
  ]);
}
