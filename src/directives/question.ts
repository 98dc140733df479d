import { defineDirective } from './definition.ts';

/** Read by the group quiz around it; alone it shows nothing to anybody. */
export const question = defineDirective({
  name: 'question',
  forms: ['leaf'],
  about:
    'Inside a group quiz: a question that the kit computes, another for each group (`ask`), or one from a questions file (`use`).',
  example: '::question{ask=nights-until marks=2}',
  label: { use: 'none' },
  attributes: {
    ask: {
      type: 'choice',
      values: ['night-of-date', 'nights-until', 'next-in-run'],
      about:
        'the kind of computed question: which night a date is, how many nights until a night, or which night is next',
    },
    use: {
      type: 'text',
      about: 'a question of a questions file: file and question with a slash between, as in `estuary/hidden-moon`',
    },
    marks: { type: 'integer', min: 1, max: 20, about: 'marks for the question' },
  },
  inside: ['group-quiz'],
  resolve: () => ({ learner: undefined, teacher: undefined }),
  learnerView: () => [],
  teacherView: () => [],
});
