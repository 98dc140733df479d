import { answer } from '../directives/answer.ts';
import type { Directive } from '../directives/definition.ts';
import { gestureSequence } from '../directives/gesture-sequence.ts';
import { groupQuiz } from '../directives/group-quiz.ts';
import { handout } from '../directives/handout.ts';
import { month } from '../directives/month.ts';
import { night } from '../directives/night.ts';
import { question } from '../directives/question.ts';
import { score } from '../directives/score.ts';
import { sentence } from '../directives/sentence.ts';
import { sky } from '../directives/sky.ts';
import { step } from '../directives/step.ts';
import { teacher } from '../directives/teacher.ts';
import { tonight } from '../directives/tonight.ts';

/** Every directive an author can write, in the order of the authors' reference. */
export const DIRECTIVES: readonly Directive[] = [
  tonight,
  sky,
  night,
  month,
  sentence,
  step,
  teacher,
  handout,
  score,
  gestureSequence,
  groupQuiz,
  question,
  answer,
];
