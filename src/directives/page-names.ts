/**
 * Names of the pages that a lesson's directives make, so that a directive can link to them
 * before the pack is planned. `slug` and `stem` are the lesson's, unique in the week.
 */
export const LEARNERS_FOLDER = 'learners';

/** File name of the teacher's page that shows how each gesture is done. */
export const GESTURES_PAGE = 'gestures.html';

/** Anchor of a night on the page of gestures. @param number The night's place in the calendar's list, from 1. */
export function nameNightAnchor(number: number): string {
  return `night-${number}`;
}

/** File name, in the learners' folder, of the papers of a lesson's nth quiz. */
export function nameQuizPage(stem: string, quizNumber: number): string {
  return `${stem}-quiz-${quizNumber}.html`;
}

/** File name, in the learners' folder, of a lesson's nth handout: `3-wednesday-2-sky-slip.html`. */
export function nameHandoutPage(stem: string, handoutNumber: number, title: string): string {
  const words = nameInAscii(title);
  return `${stem}-${handoutNumber}${words === '' ? '' : `-${words}`}.html`;
}

/** File name of the list of the week's keys. */
export const KEY_PAGE = 'key.html';

/** File name of the answers to a lesson's quizzes: `key-3-wednesday.html`, so that the keys stand together. */
export function nameKeyPage(stem: string): string {
  return `key-${stem}.html`;
}

/** Anchor of a quiz on the key of its lesson. */
export function nameKeyAnchor(slug: string, quizNumber: number): string {
  return `${slug}-quiz-${quizNumber}`;
}

/** Lower-case ASCII words joined by hyphens, at most 40 characters; empty when nothing of the text is left. */
export function nameInAscii(text: string): string {
  return text
    .normalize('NFD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .slice(0, 40)
    .replace(/^-+|-+$/g, '');
}
