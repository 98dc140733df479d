import type { LearnerQuestion } from '../../quiz/model.ts';
import { isOfLabelWords } from './explain.ts';
import { countPhrase } from './find-phrase.ts';
import { listAround, type PlacedQuestion, type PlacedQuestions } from './locate-questions.ts';
import { createPhraseSearch } from './phrase-search.ts';
import { sayLeak } from './say-leak.ts';
import type { SearchedPage } from './searched-page.ts';
import type { Secret } from './secret.ts';

/**
 * Looks for written answers in plain sight on their own papers: in words that come neither from a question nor from an
 * option. Usual words and numbers count only beside their own question, where no other question has them.
 */
export function checkStrayAnswers(page: SearchedPage, placed: PlacedQuestions): void {
  const answers = page.setting.secrets.filter(
    ({ kind, owner }) => kind === 'answer' && owner.question?.page === page.path,
  );
  if (answers.length === 0 || placed.questions.length === 0) return;
  const strays = page.words.slice(0, page.ownWords).map((word, at) => (placed.isExplained(at) ? '' : word));
  createPhraseSearch(answers.map(({ words }) => words)).find(strays, (index, at) => {
    const secret = answers[index];
    if (secret === undefined || isUsual(secret, strays, at, page, placed)) return;
    page.add({
      severity: 'error',
      at: page.runOf(at).at,
      message: sayLeak(secret, 'in the text', page.setting.origin),
    });
  });
}

/** Whether the words would stand there for any other answer as well. */
function isUsual(
  secret: Secret,
  strays: readonly string[],
  at: number,
  page: SearchedPage,
  { questions }: PlacedQuestions,
): boolean {
  const isNumber = secret.words.every((word) => /^\d+$/.test(word));
  if (!isNumber && !isOfLabelWords(secret.words, page.setting.labels)) return false;
  const { owner } = secret;
  const own = questions.find(({ paper, question }) => {
    return paper === owner.question?.paper && question.number === owner.question.number;
  });
  if (own === undefined || at < own.promptAt || !isInside(page, at, own.element)) return true;
  const others = questions.filter(({ question }) => {
    return question.number !== own.question.number && isSameSpace(question, own.question);
  });
  return others.length === 0 || others.some((other) => countPhrase(readStrays(other, strays, page), secret.words) > 0);
}

function isSameSpace({ space }: LearnerQuestion, { space: other }: LearnerQuestion): boolean {
  return space.kind === 'line' && other.kind === 'line' && (space.unit === undefined) === (other.unit === undefined);
}

/** The words of a question after its prompt that nothing explains. */
function readStrays({ promptAt, element }: PlacedQuestion, strays: readonly string[], page: SearchedPage): string[] {
  const words: string[] = [];
  for (let at = promptAt; at < strays.length && isInside(page, at, element); at += 1) words.push(strays[at] ?? '');
  return words;
}

function isInside({ markup, runOf }: SearchedPage, at: number, element: number): boolean {
  return listAround(markup.elements, runOf(at).element).includes(element);
}
