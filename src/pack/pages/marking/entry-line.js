import { make, makeButton } from './make-element.js';
import { AS_IN_KEY, BLANK, writeRight } from './mark-answer.js';

/**
 * A line to type on: a word, a number, or a row of letters; beside it, what is entered most with one tap.
 * @param label What the line is for.
 * @param onEntry Called with each new entry.
 */
export function createLine(answer, { label, words }, onEntry) {
  const isRow = answer.kind !== 'line';
  const input = make('input', isRow ? 'marking-letters' : 'marking-word', {
    type: 'text',
    size: isRow ? Math.max(5, answer.right.length + 1) : 16,
    autocomplete: 'off',
    enterkeyhint: 'next',
    autocapitalize: isRow ? 'characters' : 'none',
    autocorrect: 'off',
    spellcheck: 'false',
  });
  const enter = (entry) => {
    // The answer itself is shown where its sign was typed, unless that sign is an answer.
    const isSign = entry === AS_IN_KEY && !(answer.accepted ?? []).includes(entry);
    if (isSign) input.value = writeRight(answer);
    onEntry(input.value);
  };
  input.addEventListener('input', () => enter(input.value));
  const createTap = (entry, sign, meaning) => {
    const face = [make('span', 'marking-key', { 'aria-hidden': 'true' }, sign), ' ', meaning];
    return makeButton('marking-tap', face, () => {
      input.value = entry;
      enter(entry);
    });
  };
  return {
    element: make(
      'div',
      'marking-line',
      {},
      make('label', '', {}, make('span', '', {}, label), ' ', input),
      createTap(AS_IN_KEY, '=', words.asInKey),
      createTap(BLANK, '–', words.blank),
    ),
    show: (entry) => {
      input.value = entry;
    },
    focus: () => {
      input.focus();
      input.select();
    },
    inputs: [input],
  };
}
