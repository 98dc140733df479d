import type { ElementContent } from 'hast';
import type { LearnerPaper } from '../../quiz/model.ts';
import type { PapersModel } from './check-papers.ts';
import { countPhrase } from './find-phrase.ts';
import type { PlacedQuestions } from './locate-questions.ts';
import { listSpaceContent } from './page-model.ts';
import { readContentText } from './read-content.ts';
import { nameSecret, shorten } from './say-leak.ts';
import type { SearchedPage } from './searched-page.ts';
import type { Secret } from './secret.ts';
import { splitWords } from './split-words.ts';
import { isWrittenAnswer } from './trace-sentence.ts';

/** So long an answer is in nobody's mouth by chance. Our own choice. */
const FEWEST_WORDS = 3;
const FEWEST_LETTERS = 12;

/**
 * Looks for answers that an author wrote and that another question of the same paper gives away in so many words.
 * Names and other short answers are left out: they stand all over a paper and give nothing away.
 */
export function checkGiveaways(
  page: SearchedPage,
  { quiz, lesson }: PapersModel,
  { questions }: PlacedQuestions,
): void {
  const [paper] = quiz.papers;
  const source = page.setting.sources.get(lesson.file);
  if (paper === undefined || source === undefined) return;
  const parts = listParts(paper);
  for (const secret of page.setting.secrets) {
    const asked = secret.owner.question;
    if (secret.kind !== 'answer' || asked?.page !== page.path || !isLong(secret)) continue;
    const teller = parts.find(({ number, words }) => number !== asked.number && countPhrase(words, secret.words) > 0);
    if (teller === undefined || !isWrittenAnswer(source, secret.words)) continue;
    const at = questions.find(({ question }) => question.number === teller.number)?.promptAt ?? 0;
    const by = teller.number === 0 ? 'the words before the questions' : `question ${teller.number}`;
    page.add({
      severity: 'warning',
      at: page.runOf(at).at,
      message: `${nameSecret(secret)} is given away by ${by}: \`${shorten(secret.text)}\`; expected questions that do not answer each other; say one of them in other words`,
    });
  }
}

function isLong({ words }: Secret): boolean {
  return words.length >= FEWEST_WORDS && words.join('').length >= FEWEST_LETTERS;
}

/** The words of each question, and as number 0 those before them. */
function listParts({ introduction, questions }: LearnerPaper) {
  const join = (contents: readonly (readonly ElementContent[])[]) =>
    contents.flatMap((content) => [...splitWords(readContentText(content)), '']);
  return [
    { number: 0, words: join([introduction]) },
    ...questions.map(({ number, prompt, space }) => ({ number, words: join([prompt, ...listSpaceContent(space)]) })),
  ];
}
