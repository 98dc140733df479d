// What an answer is worth: plain arithmetic that knows neither the page nor its words. An entry is always a text, as it
// was typed or tapped; an empty one means that the answer is not marked yet.

/** Entered for the answer of the key. */
export const AS_IN_KEY = '=';
/** Entered where the group wrote nothing, or for one place that it left out. */
export const BLANK = '-';

const DASHES = /[‐‑‒–—−_]/gu;
const APOSTROPHES = /[‘’ʼʻ´`]/gu;
const LETTER_MARKS = /[\u0300-\u036f]/gu;

/** Half marks only, rounded down: whoever is partly right never gets all marks. */
const shareMarks = (marks, points, of) => Math.floor((2 * marks * points) / of) / 2;

/** A text as a marker compares it. What is typed for a paper has no curly apostrophe and no full stop to hold against it. */
export function foldAnswer(text, { case: anyCase, accents }) {
  const plain = text.normalize('NFC').replace(DASHES, BLANK).replace(APOSTROPHES, "'").replace(/\s+/gu, ' ').trim();
  const ended = plain.replace(/(.)[.!?]+$/u, '$1').trim();
  const marked = accents ? ended.normalize('NFD').replace(LETTER_MARKS, '').normalize('NFC') : ended;
  // Upper case first: it brings "ß" and "ss", and the two small sigmas, together.
  return anyCase ? marked.toUpperCase().toLowerCase() : marked;
}

/** A number as people write it, with a point or a comma; nothing for any other text. */
function readNumber(text) {
  return /^[+-]?\d+([.,]\d+)?$/u.test(text) ? Number(text.replace(',', '.')) : undefined;
}

/** "4 nights" is 4 where nights are counted, and so is "4 night". */
function dropUnit(folded, unit) {
  const [, number, word] = /^([+-]?\d+(?:[.,]\d+)?)\s*(\p{L}+)$/u.exec(folded) ?? [];
  return word !== undefined && unit.startsWith(word) ? number : folded;
}

function isSame(written, expected, { forgive, unit = '' }) {
  const [one, other] = [written, expected].map((text) =>
    dropUnit(foldAnswer(text, forgive), foldAnswer(unit, forgive)),
  );
  const number = readNumber(one);
  return one === other || (number !== undefined && number === readNumber(other));
}

/**
 * The places of a row of letters, in capitals; a dash is a place left out. Spaces, commas, points and arrows between
 * letters count for nothing.
 */
export function readLetters(text) {
  const row = text
    .normalize('NFC')
    .toUpperCase()
    .replace(/[\s,;.:/>→]+/gu, '');
  return [...row.replace(DASHES, BLANK)];
}

/** Marks as people write them: 1.5, 1,5, 1½ and ½; nothing for what is no half mark from 0 to `most`. */
export function readMarks(text, most) {
  const [, whole, half] = /^(\d{0,3})(½|[.,]\d*)?$/u.exec(text.replace(/\s+/gu, '')) ?? [];
  if (whole === undefined || (whole === '' && (half === undefined || !/\d|½/u.test(half)))) return undefined;
  const part = half === '½' ? 0.5 : Number(`0.${(half ?? '').slice(1)}`);
  const marks = Number(whole) + part;
  return (part === 0 || part === 0.5) && marks <= most ? marks : undefined;
}

/** Half marks as they are written: ½, 1, 1½. */
export function writeMarks(marks) {
  const whole = Math.floor(marks);
  return whole === marks ? `${marks}` : `${whole === 0 ? '' : whole}½`;
}

/** In words, what some marks out of more say of an answer. */
export function judgeMarks(marks, most) {
  if (marks >= most) return 'right';
  return marks > 0 ? 'partly' : 'wrong';
}

/** The entry that stands for the answer of the key. */
export function writeRight(answer) {
  if (answer.kind === 'line') return answer.accepted[0];
  return answer.right ?? `${answer.marks}`;
}

/** A letter that is not on the paper, or more letters than there are places. */
function findLetterFault(letters, { letters: known, right, kind }) {
  const unknown = letters.find((letter) => letter !== BLANK && !known.includes(letter));
  if (unknown !== undefined) return { fault: 'letter', letter: unknown };
  return kind !== 'options' && letters.length > right.length ? { fault: 'many' } : undefined;
}

/** One mark a right tick less one a wrong tick, not under none, of as many as there are right ones. */
function markTicks({ marks, right }, ticked) {
  const points = ticked.filter((letter) => right.includes(letter)).length;
  const wrong = ticked.filter((letter) => !right.includes(letter));
  return { marks: shareMarks(marks, Math.max(0, points - wrong.length), right.length), wrong };
}

/** A mark a right place. A row that has to be in order and is worth one mark is right as a whole, or not. */
function markPlaces({ kind, marks, right }, letters) {
  const points = [...right].filter((letter, place) => letters[place] === letter).length;
  const isWhole = kind === 'order' && marks === 1 && points < right.length;
  return { marks: isWhole ? 0 : shareMarks(marks, points, right.length), places: points };
}

function markLetters(answer, entry) {
  const read = readLetters(entry);
  const fault = findLetterFault(read, answer);
  if (fault !== undefined) return fault;
  if (read.every((letter) => letter === BLANK)) return { marks: 0, isBlank: true };
  if (answer.kind === 'options')
    return markTicks(
      answer,
      [...new Set(read)].filter((letter) => letter !== BLANK),
    );
  return markPlaces(answer, read);
}

/** Right, or one of the slips that were foreseen, or wrong in another way. */
function markLine(answer, entry) {
  if (answer.accepted.some((accepted) => isSame(entry, accepted, answer))) return { marks: answer.marks };
  if (entry.replace(DASHES, BLANK) === BLANK) return { marks: 0, isBlank: true };
  const slip = answer.slips.findIndex((each) => isSame(entry, each, answer));
  return { marks: 0, ...(slip < 0 ? { isUnlisted: true } : { slip }) };
}

/** The teacher decides: the entry is the marks. */
function markByHand({ marks: most }, entry) {
  if (entry.replace(DASHES, BLANK) === BLANK) return { marks: 0, isBlank: true };
  const marks = readMarks(entry, most);
  return marks === undefined ? { fault: 'marks' } : { marks };
}

/**
 * Marks what a group wrote.
 * @param answer One answer of the key, as `marking-fields.ts` describes it.
 * @param entry What was typed or tapped.
 * @returns Nothing while the entry is empty; a `fault` where it cannot be read; else the marks, with what there is to say.
 */
export function markAnswer(answer, entry) {
  const text = entry.trim();
  if (text === '') return undefined;
  if (text === AS_IN_KEY && (answer.kind !== 'line' || !answer.accepted.includes(text))) {
    return markAnswer(answer, writeRight(answer));
  }
  if (answer.kind === 'line') return markLine(answer, text);
  return answer.kind === 'lines' || answer.kind === 'disc' ? markByHand(answer, text) : markLetters(answer, text);
}

/**
 * What counts in the end: the teacher's own marks where there are any that can be read, else those of the entry.
 * @returns Nothing while there is neither; `marks`, and whether they are the teacher's own.
 */
export function settleMarks(answer, { entry, own }) {
  const computed = markAnswer(answer, entry);
  const marks = own.trim() === '' ? undefined : readMarks(own, answer.marks);
  if (marks !== undefined) return { marks, isOwn: marks !== computed?.marks };
  return computed?.marks === undefined ? undefined : { marks: computed.marks, isOwn: false };
}

/** Marks and what they are out of, over those answers of a list that are marked; and how many are not. */
export function addMarks(answers) {
  const marked = answers.filter(({ settled }) => settled !== undefined);
  return {
    marks: marked.reduce((sum, { settled }) => sum + settled.marks, 0),
    most: marked.reduce((sum, { answer }) => sum + answer.marks, 0),
    marked: marked.length,
    open: answers.length - marked.length,
  };
}
