import { FORGIVE_WORDS, MOST_LINES, MOST_MARKS } from '../content/question-words.ts';
import { defineDirective } from './definition.ts';

/** Read by the group quiz around it; alone it shows nothing to anybody. */
export const answer = defineDirective({
  name: 'answer',
  forms: ['leaf'],
  about:
    'Inside a question of a group quiz: its answer (a short one in square brackets, a rubric for an open one, a Moon to draw), and whatever else only the key shows.',
  example: '::answer[Hidden Moon]{accept="the hidden moon; dark moon" marks=2}',
  label: { use: 'optional', about: 'the right answer to a short question, as the key shows it' },
  attributes: {
    accept: {
      type: 'text',
      about: 'other spellings of a short answer that count as right, with a semicolon between them',
    },
    forgive: {
      type: 'choice',
      values: FORGIVE_WORDS,
      about:
        'what a marker overlooks in a short answer: `case` (capitals or small letters), `macrons` (and all other marks on letters), `all` of both, or `nothing`; left out, `all`',
    },
    rubric: {
      type: 'text',
      about:
        'what earns the marks of an open answer, the most marks first and a semicolon between, as in `2: says why; 1: says what`',
    },
    lines: {
      type: 'integer',
      min: 1,
      max: MOST_LINES,
      about: 'how many lines there are to write an open answer on; left out, 3',
    },
    draw: {
      type: 'text',
      about:
        "the Moon to be drawn in an empty disc: a day of this week, or the name of a night, as it comes in the month of the lesson's date",
    },
    marks: { type: 'integer', min: 1, max: MOST_MARKS, about: 'marks for the question' },
    working: { type: 'text', about: 'how to find the answer, in words to say aloud; only the key shows it' },
    hint: { type: 'text', about: 'what to say to a group that is stuck; only the key shows it' },
    check: {
      type: 'text',
      about:
        'what the calendar must say the right answer is, as in `night-on wednesday`: on other dates an old answer is then found out',
    },
  },
  inside: ['group-quiz'],
  resolve: () => ({ learner: undefined, teacher: undefined }),
  learnerView: () => [],
  teacherView: () => [],
});
