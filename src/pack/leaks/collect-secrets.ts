import type { ElementContent } from 'hast';
import type { ResolvedLesson, ResolvedWeek } from '../../lesson/model.ts';
import type { ExpectedAnswer, KeyAnswer, KeyPaper, LearnerQuestion, QuizSheet } from '../../quiz/model.ts';
import { computePackPaths } from '../pack-paths.ts';
import { listTeachersNotes, readContentText } from './read-content.ts';
import { gradeAnswer, gradeSentence, isOwnSentence, type Secret, type SecretKind, type SecretOwner } from './secret.ts';
import { splitWords } from './split-words.ts';

/**
 * All that the key and the notes for the teacher say, once each. What a question's own words or options say as well is
 * no secret.
 */
export function collectSecrets(week: ResolvedWeek): Secret[] {
  const paths = computePackPaths(week);
  const names = listCalendarNames(week);
  const book = createBook();
  week.lessons.forEach((lesson, index) => {
    lesson.quizzes.forEach((quiz, quizIndex) => {
      const page = paths.lessons[index]?.papers[quizIndex] ?? '';
      collectQuiz(quiz, { lesson, page, names }, book);
    });
    collectNotes(lesson, book);
  });
  return book.secrets;
}

interface QuizSetting {
  readonly lesson: ResolvedLesson;
  readonly page: string;
  /** Folded names of the calendar, words joined by spaces. */
  readonly names: ReadonlySet<string>;
}

type Book = ReturnType<typeof createBook>;

/** Takes secrets in; the same one, as handwritten questions have it for each group, is kept once. */
function createBook() {
  const secrets: Secret[] = [];
  const seen = new Set<string>();
  return {
    secrets,
    /** Tells whether a text of a question was taken in before. */
    knows(kind: SecretKind, page: string, number: number, text: string): boolean {
      const key = `${kind} ${page} ${number} ${text}`;
      if (seen.has(key)) return true;
      seen.add(key);
      return false;
    },
    add(secret: Secret): void {
      if (secret.words.length > 0) secrets.push(secret);
    },
  };
}

/** The names of the calendar's nights, groups and months, folded, words joined by spaces. */
export function listCalendarNames({ calendar, almanac }: ResolvedWeek): Set<string> {
  const named = [...almanac.run, ...calendar.groups, ...calendar.months, calendar.thirteenthMonth ?? []].flat();
  return new Set(named.map(({ name }) => splitWords(name).join(' ')));
}

function collectQuiz(quiz: QuizSheet, setting: QuizSetting, book: Book): void {
  quiz.key.forEach((key, paper) => {
    const questions = quiz.papers[paper]?.questions ?? [];
    for (const answer of key.answers) {
      const owner = nameOwner(quiz, answer.number, paper, setting);
      const question = questions.find(({ number }) => number === answer.number);
      collectAnswer(answer, question, owner, setting, book);
    }
    collectLetters(key, nameOwner(quiz, 1, paper, setting), book);
  });
}

function nameOwner(quiz: QuizSheet, number: number, paper: number, { lesson, page }: QuizSetting): SecretOwner {
  return { file: lesson.file, question: { quiz: quiz.title, number, page, paper } };
}

function collectAnswer(
  answer: KeyAnswer,
  question: LearnerQuestion | undefined,
  owner: SecretOwner,
  { page, names }: QuizSetting,
  book: Book,
): void {
  // Made when first needed: of most handwritten questions everything is known from the first paper.
  let asked: string | undefined;
  const isAsked = (words: readonly string[]) => {
    asked ??= ` ${splitWords(readQuestionText(answer, question)).join(' ')} `;
    return asked.includes(` ${words.join(' ')} `);
  };
  const addSentences = (kind: SecretKind, text: string) => {
    if (book.knows(kind, page, answer.number, text)) return;
    for (const part of splitSentences(text)) {
      const words = splitWords(part);
      if (!isAsked(words)) book.add({ kind, telling: gradeSentence(words), text: part, words, owner });
    }
  };
  const addAnswer = (kind: SecretKind, text: string) => {
    if (book.knows(kind, page, answer.number, text)) return;
    const words = splitWords(text);
    book.add({ kind, telling: gradeAnswer(words, names.has(words.join(' '))), text: text.trim(), words, owner });
  };
  addSentences('working', readContentText(answer.working));
  addSentences('hint', answer.hint ?? '');
  for (const [kind, text] of listExpected(answer.expected)) {
    if (kind === 'meaning' || kind === 'rubric') addSentences(kind, text);
    else if (kind === 'letters') addLetters(text.split(' '), owner, book);
    else addAnswer(kind, text);
  }
}

/** What the key expects, as texts. */
function listExpected(expected: ExpectedAnswer): (readonly [kind: SecretKind, text: string])[] {
  switch (expected.kind) {
    case 'options':
      return expected.options.map(({ right, content, means }) =>
        right ? ['option', readContentText(content)] : ['meaning', readContentText(means)],
      );
    case 'line':
      return [
        ...expected.accepted.map((spelling) => ['answer', readContentText(spelling)] as const),
        ...expected.slips.map(({ means }) => ['meaning', readContentText(means)] as const),
      ];
    case 'lines':
      return expected.rubric.map(({ words }) => ['rubric', words]);
    case 'disc':
      return [['drawing', expected.description]];
    case 'order':
      return [['letters', expected.items.map(({ letter }) => letter).join(' ')]];
    case 'match':
      return [['letters', expected.pairs.map(({ right }) => right.letter).join(' ')]];
  }
}

/** The words of a question as its learners read them. */
function readQuestionText({ prompt }: KeyAnswer, question: LearnerQuestion | undefined): string {
  const space = question?.space;
  const shown: (readonly ElementContent[])[] = [prompt, question?.prompt ?? []];
  if (space?.kind === 'options') shown.push(...space.options.map(({ content }) => content));
  if (space?.kind === 'order') shown.push(...space.items.map(({ content }) => content));
  if (space?.kind === 'match') shown.push(...space.left, ...space.right.map(({ content }) => content));
  return shown.map(readContentText).join('\n');
}

/** So few letters in a row come together by chance. Our own choice. */
const FEWEST_LETTERS = 4;

/** The letters of a paper's right options, in a row, as somebody would note them down. */
function collectLetters({ answers }: KeyPaper, owner: SecretOwner, book: Book): void {
  const letters = answers.flatMap(({ expected }) => findRightLetter(expected) ?? []);
  addLetters(letters, owner, book);
}

/** The letter of the one right option; undefined for any other question. */
export function findRightLetter(expected: ExpectedAnswer): string | undefined {
  if (expected.kind !== 'options') return undefined;
  const [right, second] = expected.options.filter((option) => option.right);
  return second === undefined ? right?.letter : undefined;
}

function addLetters(letters: readonly string[], owner: SecretOwner, book: Book): void {
  const inOrder = letters.every((letter, index) => index === 0 || (letters[index - 1] ?? '') < letter);
  if (letters.length < FEWEST_LETTERS || inOrder) return;
  const text = letters.join(' ');
  book.add({ kind: 'letters', telling: 'unseen', text, words: splitWords(text), owner });
}

/** Sentences of notes for the teacher that nobody would write again by chance. */
function collectNotes({ body, file }: ResolvedLesson, book: Book): void {
  for (const note of listTeachersNotes(body)) {
    for (const text of splitSentences(readContentText(note))) {
      const words = splitWords(text);
      if (isOwnSentence(words)) book.add({ kind: 'note', telling: 'anywhere', text, words, owner: { file } });
    }
  }
}

/** The sentences of a text; each line is one at least. */
export function splitSentences(text: string): string[] {
  return text
    .split(/(?<=[.!?…。！？]["'”’»)]*)\s+|\n+/)
    .map((sentence) => sentence.trim())
    .filter((sentence) => sentence !== '');
}
