/** Whose answer a secret is, for messages to the author. */
export interface SecretOwner {
  /** The lesson's file, as messages show it. */
  readonly file: string;
  /** Absent for a note to the teacher. */
  readonly question?: {
    readonly quiz: string;
    readonly number: number;
    /** The learners' page on which it is asked. */
    readonly page: string;
    /** Place among the papers of the quiz, from 0; of a question that all groups get, the first. */
    readonly paper: number;
  };
}

/**
 * `answer`: what belongs on a line; `option`: a right option; `working`, `hint`, `meaning` (of a wrong answer) and
 * `rubric`: what the key says; `drawing`: the Moon to be drawn, in words; `letters`: those of the right options, in
 * order; `note`: from a note for the teacher.
 */
export type SecretKind =
  | 'answer'
  | 'option'
  | 'working'
  | 'hint'
  | 'meaning'
  | 'rubric'
  | 'drawing'
  | 'letters'
  | 'note';

/**
 * Where words are told from chance. `anywhere`: sentences that only the key holds. `unseen`: names and answers, which
 * pages show all the time, but which have no business where nobody reads. `alone`: too short for that as well, such as
 * "3" or "left": only as the whole of a text that nobody sees.
 */
export type Telling = 'anywhere' | 'unseen' | 'alone';

/** Something that no learner may get from a file. */
export interface Secret {
  readonly kind: SecretKind;
  readonly telling: Telling;
  /** As the key has it. */
  readonly text: string;
  /** Folded, as `splitWords` gives them; never empty. */
  readonly words: readonly string[];
  readonly owner: SecretOwner;
}

/** So many words, with so many letters, are a sentence; fewer come together by chance. Our own choice. */
const SENTENCE_WORDS = 3;
const SENTENCE_LETTERS = 10;

/** A sentence so long is nobody's by chance, even in a text about the same thing. Our own choice. */
const OWN_WORDS = 5;
const OWN_LETTERS = 24;

/** So long a word, or several words, is no usual word of a page. Our own choice. */
const NAME_LETTERS = 8;
const WORD_LETTERS = 4;

/** How what only the key says is told from chance. */
export function gradeSentence(words: readonly string[]): Telling {
  return words.length >= SENTENCE_WORDS && countLetters(words) >= SENTENCE_LETTERS ? 'anywhere' : gradeAnswer(words);
}

/** How an answer is told from chance. @param isName Whether it is a name of the calendar, which is no usual word. */
export function gradeAnswer(words: readonly string[], isName = false): Telling {
  return countLetters(words) >= (isName ? WORD_LETTERS : NAME_LETTERS) ? 'unseen' : 'alone';
}

/** Whether nobody would write these words again without knowing them. */
export function isOwnSentence(words: readonly string[]): boolean {
  return words.length >= OWN_WORDS && countLetters(words) >= OWN_LETTERS;
}

/** Digits do not count: numbers stand everywhere. */
function countLetters(words: readonly string[]): number {
  return words.reduce((sum, word) => sum + (/^\d+$/.test(word) ? 0 : word.length), 0);
}
