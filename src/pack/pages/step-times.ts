import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { LessonStep } from '../../directives/definition.ts';

/**
 * The steps of a lesson as a list of clock time, title and minutes.
 * @param page The lesson's page, to which each title leads; empty for a list on that page itself.
 */
export function renderStepTimes(steps: readonly LessonStep[], labels: Labels, page: string): Element {
  return h(
    'ol',
    { className: ['step-times', 'plain-list'] },
    steps.map((step) =>
      h('li', [
        h('span', { className: ['at'] }, labels.clock(step.beginsAt)),
        h('a', { href: `${page}#step-${step.number}` }, step.title),
        h('span', { className: ['for'] }, labels.count('minutes', step.minutes)),
      ]),
    ),
  );
}
