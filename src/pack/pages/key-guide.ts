import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { KeyAnswer, QuizSheet } from '../../quiz/model.ts';
import { listRoles } from './group-roles.ts';

/**
 * What a teacher needs to know once a quiz, before the groups' answers: how to mark what can be partly right, as far as
 * the quiz has such questions, and who does what in a group.
 * @param quizOfWeek 1-based among all quizzes of the week.
 */
export function renderKeyGuide(quiz: QuizSheet, quizOfWeek: number, labels: Labels): Element {
  return h('div', { className: ['key-guide'] }, [...renderRules(quiz, labels), renderJobs(quizOfWeek, labels)]);
}

function renderRules(quiz: QuizSheet, labels: Labels): Element[] {
  const answers = quiz.key[0]?.answers ?? [];
  const rules = RULES.filter(({ holdsFor }) => answers.some(holdsFor)).map(({ label }) => labels.text(label));
  if (rules.length === 0) return [];
  return [
    h('div', { className: ['key-rules'] }, [
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

function renderJobs(quizOfWeek: number, labels: Labels): Element {
  const jobs = listRoles(quizOfWeek).map((role, index) =>
    labels.text('key-seat-role', { n: index + 1, role: labels.text(role) }),
  );
  return h('div', { className: ['key-jobs'] }, [
    h('h3', labels.text('key-jobs')),
    h('p', jobs.join(' · ')),
    h('p', labels.text('key-jobs-how')),
  ]);
}
