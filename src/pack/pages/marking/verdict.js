import { copyInside, fillWords, make, makeSign } from './make-element.js';
import { judgeMarks, readLetters, readMarks, writeMarks } from './mark-answer.js';

/** True of marks that somebody typed and nobody can read. */
export function isUnreadable(own, { marks }) {
  return own.trim() !== '' && readMarks(own, marks) === undefined;
}

/** What there is to say about an entry besides its marks. */
function listNotes({ answer, state }, marked, words) {
  if (isUnreadable(state.own, answer)) return [fillWords(words.noMarks, { most: answer.marks })];
  if (marked?.fault === 'letter') return [fillWords(words.noLetter, marked)];
  if (marked?.fault === 'many') return [words.tooMany];
  if (marked?.fault === 'marks') return [fillWords(words.noMarks, { most: answer.marks })];
  if (marked?.isUnlisted) return [words.unlisted];
  if (marked?.places === undefined || marked.places === answer.right.length) return [];
  return [fillWords(words.places, { n: marked.places, length: answer.right.length })];
}

/** What the group wrote, for paper; nothing where the teacher gave marks without it. */
function writeEntry({ answer: { kind }, state }) {
  if (kind === 'lines' || kind === 'disc') return '';
  return kind === 'line' ? state.entry.trim() : readLetters(state.entry).join('');
}

function makeJudgement(row, marked, words) {
  const { answer, settled } = row;
  const isBlank = marked?.isBlank === true && settled.marks === 0;
  const kind = isBlank ? 'blank' : judgeMarks(settled.marks, answer.marks);
  const word = isBlank ? words.leftBlank : words[kind];
  const worth = fillWords(words.marksOf, { marks: writeMarks(settled.marks), most: answer.marks });
  const printed = [isBlank ? '' : writeEntry(row), worth].filter((part) => part !== '');
  return [
    make('span', `marking-judgement is-${kind}`, {}, makeSign(kind), ' ', word),
    make('span', 'marking-printed', {}, printed.join(' · ')),
  ];
}

function sayOwn(marked, words) {
  const computed = marked?.marks === undefined ? [] : [fillWords(words.computed, { marks: writeMarks(marked.marks) })];
  return [words.own, ...computed].join(' · ');
}

/**
 * The elements of a verdict: a sign and a word, and what else there is to say.
 * @param row As `answer-row.js` makes it.
 * @param marked What `markAnswer` made of its entry.
 */
export function makeVerdict(row, marked, words) {
  const { settled, reasons } = row;
  const notes = [...(settled?.isOwn ? [sayOwn(marked, words)] : []), ...listNotes(row, marked, words)];
  const meanings = reasons.map(({ letter, reason }) => {
    const lead = letter === '' ? [] : [make('b', '', {}, letter), ' '];
    return make('span', 'marking-note', {}, ...lead, ...copyInside(reason));
  });
  return [
    ...(settled === undefined ? [] : makeJudgement(row, marked, words)),
    ...notes.map((note) => make('span', 'marking-note', {}, note)),
    ...meanings,
  ];
}
