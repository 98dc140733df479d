import { describe, expect, it } from 'vitest';
import { sha256 } from '../../../src/node/sha256.ts';
import { unpack } from '../../../src/node/unpack.ts';
import { createLeakFinder } from '../../../src/pack/leaks/find-leaks.ts';
import { planLearnersPages } from '../../../src/pack/plan-pages.ts';
import type { KeyAnswer, QuizSheet } from '../../../src/quiz/model.ts';
import { openContent } from '../../directives/build-week.ts';
import { openLeakLesson } from './leak-week.ts';

const choice = (index: number) =>
  `${index}. What is ${index}?\n   - [x] right ${index}\n   - [ ] wrong ${index}\n   - [ ] bad ${index}`;
const BODY = `:::group-quiz[Orders]{groups=2 seed=order}
${[1, 2, 3, 4].map(choice).join('\n\n')}

5. Put in order:
   1. first
   2. second
   3. third

6. Match.

   | Small | Large |
   | --- | --- |
   | a | one |
   | b | two |
   | c | three |
:::
`;
const opened = openLeakLesson(BODY, openContent());

/** Findings about the week with its quiz changed, on the first paper alone. */
function search(change: (answer: KeyAnswer) => KeyAnswer): string[] {
  const [lesson] = opened.week.lessons;
  const [quiz] = lesson?.quizzes ?? [];
  if (lesson === undefined || quiz === undefined) throw new Error('The lesson has a quiz.');
  const [first, ...others] = quiz.key;
  if (first === undefined) throw new Error('The quiz has a key.');
  const changed: QuizSheet = { ...quiz, key: [{ ...first, answers: first.answers.map(change) }, ...others] };
  const week = { ...opened.week, lessons: [{ ...lesson, quizzes: [changed] }] };
  return createLeakFinder(week, { sources: [], weekFolder: 'lessons/test-week', unpack })
    .find({ origin: 'planned', files: planLearnersPages(week, sha256.base64), showPath: (path) => path })
    .map(({ severity, message }) => `${severity} ${message}`);
}

const letterAt = (index: number) => String.fromCharCode(65 + index);

describe('the order on a paper', () => {
  it('tells nothing as it is dealt', () => {
    expect(search((answer) => answer)).toEqual([]);
  });

  it('tells the answers when all right options have one letter', () => {
    const found = search((answer) => {
      const { expected } = answer;
      if (expected.kind !== 'options') return answer;
      const options = expected.options.map((option) => ({ ...option, right: option.letter === 'B' }));
      return { ...answer, expected: { ...expected, options } };
    });
    expect(found).toEqual([
      'error All 4 right options of `Orders` for `Heron` have the letter `B`; expected different ones; give the quiz another `seed`',
    ]);
  });

  it('tells the answer when things to be put in order are in it', () => {
    const found = search((answer) => {
      const { expected } = answer;
      if (expected.kind !== 'order') return answer;
      const items = expected.items.map((item, index) => ({ ...item, letter: letterAt(index) }));
      return { ...answer, expected: { ...expected, items } };
    });
    expect(found).toEqual([
      'error Question 5 of `Orders` for `Heron` shows its things in the right order already; expected another order; give the quiz another `seed`',
    ]);
  });

  it('tells the answer when each thing stands beside its match', () => {
    const found = search((answer) => {
      const { expected } = answer;
      if (expected.kind !== 'match') return answer;
      const pairs = expected.pairs.map((pair, index) => ({
        ...pair,
        right: { ...pair.right, letter: letterAt(index) },
      }));
      return { ...answer, expected: { ...expected, pairs } };
    });
    expect(found).toEqual([
      'error Question 6 of `Orders` for `Heron` shows each thing beside its own match; expected another order; give the quiz another `seed`',
    ]);
  });
});
