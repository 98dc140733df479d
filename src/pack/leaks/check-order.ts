import type { KeyAnswer, QuizSheet } from '../../quiz/model.ts';
import { findRightLetter } from './collect-secrets.ts';
import type { PlacedQuestions } from './locate-questions.ts';
import type { SearchedPage } from './searched-page.ts';

/** From so many questions on it is no chance when all right options have one letter. */
const FEWEST_QUESTIONS = 4;

/** Looks for papers whose order of things tells the answers. */
export function checkOrder(page: SearchedPage, quiz: QuizSheet, { questions }: PlacedQuestions): void {
  const report = (paper: number, number: number, message: string) => {
    const at = questions.find((each) => each.paper === paper && each.question.number === number)?.promptAt;
    page.add({ severity: 'error', at: at === undefined ? 0 : page.runOf(at).at, message });
  };
  quiz.key.forEach(({ group, answers }, paper) => {
    const where = `of \`${quiz.title}\` for \`${group}\``;
    for (const answer of answers) {
      const solved = describeSolved(answer);
      if (solved === undefined) continue;
      const message = `Question ${answer.number} ${where} shows ${solved}; expected another order; give the quiz another \`seed\``;
      report(paper, answer.number, message);
    }
    const same = findSameLetter(answers);
    if (same === undefined) return;
    const message = `All ${same.count} right options ${where} have the letter \`${same.letter}\`; expected different ones; give the quiz another \`seed\``;
    report(paper, same.number, message);
  });
}

function describeSolved({ expected }: KeyAnswer): string | undefined {
  if (expected.kind === 'order' && isInOrder(expected.items.map(({ letter }) => letter))) {
    return 'its things in the right order already';
  }
  if (expected.kind === 'match' && isInOrder(expected.pairs.map(({ right }) => right.letter))) {
    return 'each thing beside its own match';
  }
  return undefined;
}

function isInOrder(letters: readonly string[]): boolean {
  return letters.length > 1 && letters.every((letter, index) => index === 0 || (letters[index - 1] ?? '') < letter);
}

/** The letter that all right options have, among questions with as many options as one another. */
function findSameLetter(answers: readonly KeyAnswer[]) {
  const byCount = new Map<number, KeyAnswer[]>();
  for (const answer of answers) {
    if (answer.expected.kind !== 'options' || findRightLetter(answer.expected) === undefined) continue;
    const count = answer.expected.options.length;
    byCount.set(count, [...(byCount.get(count) ?? []), answer]);
  }
  for (const same of byCount.values()) {
    const [letter, ...others] = new Set(same.map(({ expected }) => findRightLetter(expected)));
    if (same.length < FEWEST_QUESTIONS || others.length > 0 || letter === undefined) continue;
    return { letter, count: same.length, number: same[0]?.number ?? 0 };
  }
  return undefined;
}
