import { MOST_MARKS } from '../content/question-words.ts';
import { QUESTION_KINDS } from '../quiz/questions/question-kinds.ts';
import { defineDirective } from './definition.ts';
import { SPANS } from './questions/compute-span.ts';

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
      values: Object.keys(QUESTION_KINDS),
      about: 'the kind of computed question: see [what can be asked](#what-can-be-asked)',
    },
    use: {
      type: 'text',
      about: 'a question of a questions file: file and question with a slash between, as in `estuary/hidden-moon`',
    },
    level: {
      type: 'integer',
      min: 1,
      max: 3,
      about:
        'with `ask`: how hard, `1` to look it up, `2` to count or compare, `3` to mind a trap as well; left out, any, and the same for all groups where there is enough to ask',
    },
    within: {
      type: 'choice',
      values: SPANS,
      about:
        "with `ask`: the dates asked about, `week` (from the Monday of the lesson's week to a week after the lesson), `month` or `year` of the calendar, or `term` of the school; left out, `week`",
    },
    night: { type: 'night', about: 'with `ask`: only about this night' },
    on: { type: 'day', about: 'with `ask`: only about the night of this day' },
    marks: { type: 'integer', min: 1, max: MOST_MARKS, about: 'marks for the question' },
    hint: { type: 'text', about: 'what to say to a group that is stuck; only the key shows it' },
  },
  inside: ['group-quiz'],
  resolve: () => ({ learner: undefined, teacher: undefined }),
  learnerView: () => [],
  teacherView: () => [],
});
