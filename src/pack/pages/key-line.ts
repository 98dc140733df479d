import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { ExpectedAnswer, Forgiveness, Slip } from '../../quiz/model.ts';
import { textNode } from './page-context.ts';

type ExpectedLine = Extract<ExpectedAnswer, { readonly kind: 'line' }>;

/** What is to be written on a line: the shown spelling, others that count, how strictly to look, and what slips mean. */
export function renderKeyLine({ accepted, forgive, unit, slips }: ExpectedLine, labels: Labels): Element[] {
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
    ...(slips.length === 0 ? [] : [renderSlips(slips, labels)]),
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

/** Wrong answers to be expected, and what each means. */
function renderSlips(slips: readonly Slip[], labels: Labels): Element {
  return h('div', { className: ['key-slips'] }, [
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
  ]);
}
