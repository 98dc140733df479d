import { defineDirective } from './definition.ts';

/** Read by the group quiz around it; alone it shows nothing to anybody. */
export const answer = defineDirective({
  name: 'answer',
  forms: ['leaf'],
  about:
    'Inside a question of a group quiz: the answer to a question with no options, or the marks and working of one with options.',
  example: '::answer[Hidden Moon]{accept="the hidden moon; dark moon" marks=2}',
  label: { use: 'optional', about: 'the right answer, as the key shows it; only for a question without options' },
  attributes: {
    accept: { type: 'text', about: 'other spellings that count as right, with a semicolon between them' },
    marks: { type: 'integer', min: 1, max: 20, about: 'marks for the question' },
    working: { type: 'text', about: 'how to find the answer, in words to say aloud; only the key shows it' },
  },
  inside: ['group-quiz'],
  resolve: () => ({ learner: undefined, teacher: undefined }),
  learnerView: () => [],
  teacherView: () => [],
});
