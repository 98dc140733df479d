import type { Secret, SecretKind } from './secret.ts';

/** Where the searched files come from: what the kit is about to write, or a pack that lies in the output folder. */
export type Origin = 'planned' | 'built';

/** Who would have to mend a leak. */
export type LeakMaker = Origin | 'author' | 'picture';

const WHAT: Readonly<Record<Exclude<SecretKind, 'note'>, string>> = {
  answer: 'The answer to question',
  option: 'The right option of question',
  working: 'The working of question',
  hint: 'The hint for question',
  meaning: 'What the key says of a wrong answer to question',
  rubric: 'The marking of question',
  drawing: 'What is to be drawn in question',
  letters: 'The right letters, from question',
};

const ADVICE: Readonly<Record<LeakMaker, string>> = {
  planned: 'this is a fault of the kit: the pack must not be handed out; please report it',
  built: 'the file is not as the kit builds it now; build the week again',
  author: 'take it out of the page, or say it in other words in the key',
  picture: 'save the file again without it',
};

/** A secret as the subject of a message: `The working of question 3 of `Moon quiz` (`lessons/a/monday.md`)`. */
export function nameSecret({ kind, owner }: Pick<Secret, 'kind' | 'owner'>): string {
  if (kind === 'note' || owner.question === undefined) return `A note for the teacher of \`${owner.file}\``;
  return `${WHAT[kind]} ${owner.question.number} of \`${owner.question.quiz}\` in \`${owner.file}\``;
}

/** A message of the usual pattern about a secret that a learner could read. @param where Such as `in a comment`. */
export function sayLeak(secret: Pick<Secret, 'kind' | 'owner' | 'text'>, where: string, maker: LeakMaker): string {
  return `${nameSecret(secret)} stands ${where}: \`${shorten(secret.text)}\`; expected none of it in a file for learners; ${ADVICE[maker]}`;
}

/** A message about what a file for learners may not have, whatever it says. */
export function sayFault(found: string, expected: string, maker: LeakMaker): string {
  return `Found \`${shorten(found)}\` in a file for learners; expected ${expected}; ${ADVICE[maker]}`;
}

const LONGEST = 90;

/** A text on one line, cut where it is long. */
export function shorten(text: string): string {
  const line = text.replace(/\s+/g, ' ').replaceAll('`', '’').trim();
  return line.length <= LONGEST ? line : `${line.slice(0, LONGEST - 1)}…`;
}
