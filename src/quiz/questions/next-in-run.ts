import type { QuestionKind } from './question-instance.ts';
import { listSteps } from './step-in-run.ts';

/** "Which night comes next after X this month?", a choice. */
export const nextInRun: QuestionKind = {
  about: 'Which night comes next after a night?',
  levels: [
    'the next night of the same group',
    'the first night of the next group',
    'the night after the last one of the month, or after which a name is left out',
  ],
  list: (facts) => listSteps(facts, 'next'),
};
