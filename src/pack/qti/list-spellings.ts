import type { Forgiveness } from '../../quiz/model.ts';

/** Up to so many letters with marks, each may be written with or without its own: 16 spellings at most. Our own choice. */
const MOST_LETTERS_APART = 4;

/**
 * Every spelling that a machine must know so as to take an accepted answer, the given one first. A machine can overlook
 * capitals, but neither marks on letters nor how apostrophes and dashes are typed: both are written out.
 * @param accepted Text of an accepted answer.
 */
export function listSpellings(accepted: string, forgive: Forgiveness): string[] {
  const text = tidySpace(accepted.normalize('NFC'));
  const marked = forgive.accents ? listUnmarked(text) : [text];
  return [...new Set(marked.flatMap((each) => [each, typePlainly(each)]))];
}

/** A text as it is typed: with the one kind of space that a keyboard has, and none at its ends. */
export function tidySpace(text: string): string {
  return text.replace(/\s+/gu, ' ').trim();
}

/** Apostrophes and dashes as a keyboard has them. */
function typePlainly(text: string): string {
  return text.replace(/[‘’ʼʻ]/gu, "'").replace(/[‐‑‒–—−]/gu, '-');
}

function listUnmarked(text: string): string[] {
  const letters = text.match(/\P{M}\p{M}*/gu) ?? [];
  const bare = letters.map((letter) => letter.normalize('NFD').replace(/\p{M}/gu, '').normalize('NFC'));
  const marked = letters.flatMap((letter, index) => (letter === bare[index] ? [] : [index]));
  if (marked.length > MOST_LETTERS_APART) return [text, bare.join('')];
  return Array.from({ length: 2 ** marked.length }, (_, choice) =>
    letters
      .map((letter, index) => (isTaken(choice, marked.indexOf(index)) ? (bare[index] ?? letter) : letter))
      .join(''),
  );
}

/** True where a bit of a number is set; false for no place. */
function isTaken(choice: number, place: number): boolean {
  return place >= 0 && Math.floor(choice / 2 ** place) % 2 === 1;
}
