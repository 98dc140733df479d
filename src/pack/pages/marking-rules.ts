import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { KeyAnswer, QuizSheet } from '../../quiz/model.ts';

/** How to mark what can be partly right, as far as the quiz has such questions; nothing where it has none. */
export function renderMarkingRules(quiz: QuizSheet, labels: Labels): Element[] {
  const answers = quiz.key[0]?.answers ?? [];
  const rules = RULES.filter(({ holdsFor }) => answers.some(holdsFor)).map(({ label }) => labels.text(label));
  if (rules.length === 0) return [];
  return [
    h('section', { className: ['key-rules'] }, [
      h('h3', labels.text('key-rule')),
      h(
        'ul',
        [...rules, labels.text('key-rule-half')].map((rule) => h('li', rule)),
      ),
    ]),
  ];
}

const RULES = [
  {
    label: 'key-rule-several',
    holdsFor: ({ expected }: KeyAnswer) =>
      expected.kind === 'options' && expected.options.filter(({ right }) => right).length > 1,
  },
  { label: 'key-rule-order', holdsFor: ({ expected }: KeyAnswer) => expected.kind === 'order' },
  { label: 'key-rule-match', holdsFor: ({ expected }: KeyAnswer) => expected.kind === 'match' },
] as const;
