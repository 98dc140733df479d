import type { QuestionKind } from './question-instance.ts';
import { listSteps } from './step-in-run.ts';

/** "Which night comes just before X this month?", a choice. */
export const beforeInRun: QuestionKind = {
  about: 'Which night comes just before a night?',
  levels: [
    'the night before in the same group',
    'the last night of the group before',
    'the night before the first one of the month, or before which a name is left out',
  ],
  list: (facts) => listSteps(facts, 'before'),
};
