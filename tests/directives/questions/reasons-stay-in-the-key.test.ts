import { describe, expect, it } from 'vitest';
import { resolveWeek } from '../../../src/lesson/resolve-week.ts';
import { makeWeek, openContent, writeLesson } from '../build-week.ts';

const SECRET = 'Zebras guess';
const setting = openContent();

/** What became of a choice with the secret in a quotation after its second option, written in some way. */
function ask(option: string, between: string, reason: string) {
  const question = ['1. What?', `   ${option} yes`, `   ${option.replace('x', ' ')} no${between}`, reason];
  const lesson = writeLesson(
    `:::group-quiz[Q]{groups=2}\n${question.join('\n')}\n   ${option.replace('x', ' ')} never\n:::`,
  );
  const { week, diagnostics } = resolveWeek(makeWeek({ 'a.md': lesson }), setting);
  const quizzes = week?.lessons.flatMap((each) => each.quizzes) ?? [];
  return {
    shown: JSON.stringify(quizzes.flatMap(({ papers }) => papers)).includes(SECRET),
    kept: JSON.stringify(quizzes.flatMap(({ key }) => key)).includes(SECRET),
    refused: diagnostics.some(({ rule, severity }) => rule === 'quiz-question' && severity === 'error'),
  };
}

describe('what a wrong option means', () => {
  it.each(['- [x]', '1. [x]'])('is in the key or refused, wherever it is written: %s', (option) => {
    let kept = 0;
    for (const between of ['', '\\', '  ', '\n', '\n\n', '\n   and']) {
      for (let indent = 0; indent <= 14; indent++) {
        for (const mark of ['> ', '>', '>> ', '\t> ', '- > ']) {
          const outcome = ask(option, between, `${' '.repeat(indent)}${mark}${SECRET}`);
          expect(outcome.shown, `${JSON.stringify(between)} ${indent} ${mark}`).toBe(false);
          expect(outcome.kept || outcome.refused, `${JSON.stringify(between)} ${indent} ${mark}`).toBe(true);
          if (outcome.kept) kept += 1;
        }
      }
    }
    expect(kept).toBeGreaterThan(10);
  });
});
