import type { Element } from 'hast';
import { h } from 'hastscript';
import type { Labels } from '../../content/labels.ts';
import type { QuizSheet } from '../../quiz/model.ts';
import { printData } from '../print-data.ts';
import { describePaper } from './marking-fields.ts';

/** For the key of one quiz: what its answers are, for the script alone. Shows nothing. */
export function renderMarkingAnswers(quiz: QuizSheet): Element {
  return renderData('marking-answers', quiz.key.map(describePaper));
}

/** For the end of a key's main part, once: the words of the marking help, for its script alone. Shows nothing. */
export function renderMarkingWords(labels: Labels): Element {
  return renderData('marking-words', listWords(labels));
}

/** Data that no browser runs. */
function renderData(name: string, data: unknown): Element {
  return h('script', { type: 'application/json', className: [name] }, printData(data));
}

/** Names in braces are filled in by the script. */
function listWords(labels: Labels) {
  const text = labels.text;
  return {
    title: text('marking-title'),
    offer: text('marking-offer'),
    how: [
      text('marking-how-enter'),
      text('marking-how-signs'),
      text('marking-how-papers'),
      text('marking-how-own'),
      text('marking-how-kept'),
    ],
    named: text('marking-named', { name: '{name}', what: '{what}' }),
    enterGoes: text('marking-enter-goes'),
    byPaper: text('marking-by-paper'),
    byQuestion: text('marking-by-question'),
    place: text('marking-place', { group: '{group}', n: '{n}' }),
    question: text('question', { n: '{n}' }),
    ticked: text('marking-ticked'),
    written: text('marking-written'),
    order: text('marking-order'),
    pairs: text('marking-pairs'),
    earned: text('marking-earned'),
    marks: text('marking-marks'),
    asInKey: text('marking-as-in-key'),
    blank: text('marking-blank'),
    leftBlank: text('marking-left-blank'),
    right: text('marking-right'),
    partly: text('marking-partly'),
    wrong: text('marking-wrong'),
    of: text('marking-of', { most: '{most}' }),
    marksOf: text('marking-marks-of', { marks: '{marks}', most: '{most}' }),
    places: text('marking-places', { n: '{n}', length: '{length}' }),
    unlisted: text('marking-unlisted'),
    own: text('marking-own'),
    computed: text('marking-computed', { marks: '{marks}' }),
    noLetter: text('marking-no-letter', { letter: '{letter}' }),
    tooMany: text('marking-too-many'),
    noMarks: text('marking-no-marks', { most: '{most}' }),
    open: text('marking-open', { n: '{n}' }),
    done: text('marking-done', { n: '{n}', length: '{length}' }),
    room: text('marking-room'),
    soFar: text('marking-so-far'),
    toPapers: text('marking-to-papers'),
    toSheet: text('marking-to-sheet'),
    print: text('marking-print'),
    clear: text('marking-clear'),
    clearAsk: text('marking-clear-ask'),
    clearYes: text('marking-clear-yes'),
    clearNo: text('marking-clear-no'),
    cleared: text('marking-cleared'),
    wentWrong: text('marking-went-wrong'),
  };
}
