import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { ExpectedAnswer, Forgiveness, KeyAnswer, KeyOption } from '../../quiz/model.ts';

type ExpectedOf<Kind extends ExpectedAnswer['kind']> = Extract<ExpectedAnswer, { readonly kind: Kind }>;

/** A question with its answer, how to find it, what wrong answers mean, and its marks. @param id Unique on the page. */
export function renderKeyAnswer(answer: KeyAnswer, id: string, labels: Labels): Element {
  const { expected, working, hint } = answer;
  return h('li', { value: answer.number, id }, [
    h('div', { className: ['key-answer'] }, [
      h('div', { className: ['key-words'] }, [
        h('div', { className: ['key-prompt'] }, answer.prompt),
        ...renderExpected(expected, labels),
        ...(working.length === 0 ? [] : [h('div', { className: ['key-working'] }, working)]),
        ...(expected.kind === 'line' ? renderSlips(expected, labels) : []),
        ...(hint === undefined ? [] : [h('p', { className: ['key-hint'] }, labels.text('key-hint', { hint }))]),
      ]),
      h('p', { className: ['marks'] }, labels.count('marks', answer.marks)),
    ]),
  ]);
}

function renderExpected(expected: ExpectedAnswer, labels: Labels): Element[] {
  switch (expected.kind) {
    case 'options':
      return [renderOptions(expected, labels)];
    case 'line':
      return renderLine(expected, labels);
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

/** Every option as it stands on the paper: right ones stand out by a ring around the letter, wrong ones say what they mean. */
function renderOptions({ options }: ExpectedOf<'options'>, labels: Labels): Element {
  return h(
    'ul',
    { className: ['key-options', 'plain-list'] },
    options.map((option) => renderOption(option, labels)),
  );
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

/** The shown spelling, on a second line the others that count, and how strictly to look at letters. */
function renderLine({ accepted, forgive, unit }: ExpectedOf<'line'>, labels: Labels): Element[] {
  const [shown = [], ...others] = accepted;
  const also = others.flatMap((other, index) => (index === 0 ? other : [textNode(', '), ...other]));
  return [
    h('ul', { className: ['key-right', 'plain-list'] }, [
      h('li', [h('strong', [...shown]), ...(unit === undefined ? [] : [` ${unit}`])]),
      ...(also.length === 0 ? [] : [h('li', { className: ['also'] }, [`${labels.text('also-accept')} `, ...also])]),
    ]),
    ...(accepted.some(holdsLetters)
      ? [h('p', { className: ['key-forgive'] }, labels.text(FORGIVE_LABELS[nameForgiveness(forgive)]))]
      : []),
  ];
}

/** A number is right or wrong: nothing is to be said of its letters. */
function holdsLetters(content: readonly ElementContent[]): boolean {
  return content.some((node) =>
    node.type === 'text' ? /\p{L}/u.test(node.value) : node.type === 'element' && holdsLetters(node.children),
  );
}

const FORGIVE_LABELS = {
  all: 'key-forgive-all',
  case: 'key-forgive-case',
  accents: 'key-forgive-accents',
  nothing: 'key-forgive-nothing',
} as const;

function nameForgiveness(forgive: Forgiveness): keyof typeof FORGIVE_LABELS {
  if (forgive.case) return forgive.accents ? 'all' : 'case';
  return forgive.accents ? 'accents' : 'nothing';
}

/** The row of letters as the group ought to have written it, and what they stand for. */
function renderOrder({ items }: ExpectedOf<'order'>, labels: Labels): Element {
  return h('div', { className: ['key-order'] }, [
    h('p', [`${labels.text('key-in-order')} `, h('strong', items.map(({ letter }) => letter).join(' '))]),
    h(
      'ol',
      { className: ['key-row', 'plain-list'] },
      items.map(({ content }) => h('li', [h('div', { className: ['key-content'] }, content)])),
    ),
  ]);
}

function renderPairs({ pairs }: ExpectedOf<'match'>): Element {
  return h(
    'ol',
    { className: ['key-pairs', 'plain-list'] },
    pairs.map(({ left, right }, index) =>
      h('li', [
        h('strong', `${index + 1} ${right.letter} `),
        h('div', { className: ['key-content'] }, left),
        h('div', { className: ['key-content'] }, right.content),
      ]),
    ),
  );
}

function renderRubric({ rubric }: ExpectedOf<'lines'>, labels: Labels): Element {
  return h('ul', { className: ['key-rubric', 'plain-list'] }, [
    ...rubric.map(({ marks, words }) => h('li', [h('strong', `${labels.count('marks', marks)} `), h('span', words)])),
  ]);
}

function renderDrawing({ drawing, description }: ExpectedOf<'disc'>, labels: Labels): Element {
  return h('div', { className: ['key-drawing'] }, [...drawing, h('p', labels.text('key-like-this', { description }))]);
}

/** Wrong answers to be expected on a line, and what each means. */
function renderSlips({ slips }: ExpectedOf<'line'>, labels: Labels): Element[] {
  if (slips.length === 0) return [];
  return [
    h('div', { className: ['key-slips'] }, [
      h('p', labels.text('key-if-written')),
      h(
        'ul',
        { className: ['plain-list'] },
        slips.map(({ answer, means }) =>
          h('li', { className: ['key-slip'] }, [
            h('strong', answer),
            ' ',
            h('span', { className: ['key-means'] }, means),
          ]),
        ),
      ),
    ]),
  ];
}

function textNode(value: string): ElementContent {
  return { type: 'text', value };
}
