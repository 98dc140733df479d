import type { WeekDay } from '../../content/types.ts';
import { quote } from '../../content/wording.ts';
import { foldName, foldText, readText } from '../../quiz/fold-text.ts';
import type { WrittenSource } from '../../quiz/model.ts';
import type { ResolveContext } from '../definition.ts';

/** How a check is written in a lesson, and in a questions file. */
const HOW = {
  lesson: (check: string) => `write \`check="${check}"\` in \`::answer\``,
  file: (check: string) => `write \`check: ${check}\` in the questions file`,
} as const;

/**
 * Warns of an answer that hangs on the week's dates with nothing to tie it to them: the question names a day of this
 * week, and its one right answer is the night of that day. On other dates it would be wrong, and nobody would be told.
 * @param where Where the question is written.
 */
export function suggestCheck(source: WrittenSource, where: keyof typeof HOW, context: ResolveContext): void {
  const answer = findOneAnswer(source);
  if (answer === undefined) return;
  const day = findDayOf(answer, readText(source.prompt), context);
  if (day === undefined) return;
  const expected = `night-on ${day}`;
  const message = `The answer ${quote(answer)} is right on the dates of this week only; expected it tied to the calendar; ${HOW[where](expected)}`;
  context.report({ rule: 'quiz-question', severity: 'warning', place: source.place, message, expected });
}

function findOneAnswer(source: WrittenSource): string | undefined {
  if (source.kind === 'short') return source.answers[0];
  if (source.kind !== 'choice') return undefined;
  const [right, second] = source.options.filter((option) => option.right);
  return right === undefined || second !== undefined ? undefined : readText(right.content).trim();
}

/** The day whose name stands in the question as a word and whose night is the answer. */
function findDayOf(answer: string, prompt: string, { almanac, dates, labels }: ResolveContext): WeekDay | undefined {
  const words: readonly string[] = foldText(prompt).match(/[\p{L}\p{M}]+/gu) ?? [];
  const named = [...dates].filter(([day]) => words.includes(foldText(labels.weekday(day))));
  return named.find(([, date]) => foldName(almanac.nightOn(date).night) === foldText(answer))?.[0];
}
