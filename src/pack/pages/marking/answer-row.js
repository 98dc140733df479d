import { createLine } from './entry-line.js';
import { createTiles } from './entry-tiles.js';
import { fillWords, make } from './make-element.js';
import { markAnswer, readMarks, settleMarks, writeMarks } from './mark-answer.js';
import { isUnreadable, makeVerdict } from './verdict.js';

/** For each kind of answer the word before its field. */
const FIELD_WORDS = {
  options: 'ticked',
  line: 'written',
  order: 'order',
  match: 'pairs',
  lines: 'earned',
  disc: 'earned',
};

const TYPED = ['line', 'order', 'match'];

/** What a wrong answer means, as the key has it: elements with the reason, the letter before it where there is one. */
function findReasons(item, { kind, letters }, { wrong = [], slip }) {
  const rows = [...item.querySelectorAll(kind === 'options' ? '.key-option' : '.key-slip')];
  const found = kind === 'options' ? wrong.map((letter) => [letter, letters.indexOf(letter)]) : [['', slip]];
  return found
    .map(([letter, place]) => ({ letter, reason: rows[place]?.querySelector('.key-means') }))
    .filter(({ reason }) => reason);
}

/** The field for what the group wrote, with its word before it. */
function createField(answer, { place, id, words }, onEntry) {
  const label = words[FIELD_WORDS[answer.kind]];
  if (TYPED.includes(answer.kind)) return { name: place, ...createLine(answer, { label, words }, onEntry) };
  const tiles = createTiles(answer, { name: id, words }, onEntry);
  const face = make('span', 'marking-label', { 'aria-hidden': 'true' }, label);
  return {
    name: fillWords(words.named, { name: place, what: label }),
    ...tiles,
    element: make('div', 'marking-choice', {}, face, tiles.element),
  };
}

/** The field for marks, which the teacher may write over. */
function createOwn({ place, words }) {
  return make('input', 'marking-own', {
    type: 'text',
    inputmode: 'decimal',
    size: 3,
    autocomplete: 'off',
    enterkeyhint: 'next',
    'aria-label': `${words.marks}, ${place}`,
  });
}

/**
 * What is entered and seen at one answer of the key.
 * @param answer As `marking-fields.ts` describes it.
 * @param given `item` is the answer's place in the key, `place` its name in words, `id` unique in the page.
 * @param on `change` after each new entry, `settle` when one is done with, `go` to another answer, `enter` on arriving.
 */
export function createAnswerRow(answer, given, on) {
  const { item, id, words } = given;
  const state = { entry: '', own: '' };
  const row = { answer, state, settled: undefined, reasons: [] };
  const field = createField(answer, given, (entry) => {
    state.entry = entry;
    update();
  });
  const own = createOwn(given);
  const verdict = make('p', 'marking-verdict', { id });
  const worth = [own, ` ${fillWords(words.of, { most: answer.marks })}`];
  const element = make(
    'div',
    'marking-row',
    { role: 'group', 'aria-label': field.name },
    make('div', 'marking-entry screen-only', {}, field.element),
    verdict,
    make('div', 'marking-worth screen-only', {}, ...worth),
  );
  for (const input of [...field.inputs, own]) input.setAttribute('aria-describedby', id);
  item.append(element);

  const update = () => {
    const marked = markAnswer(answer, state.entry);
    row.settled = settleMarks(answer, state);
    row.reasons = row.settled === undefined || marked === undefined ? [] : findReasons(item, answer, marked);
    if (document.activeElement !== own) showOwn();
    verdict.replaceChildren(...makeVerdict(row, marked, words));
    element.classList.toggle('is-marked', row.settled !== undefined);
    for (const input of field.inputs) input.setAttribute('aria-invalid', String(marked?.fault !== undefined));
    own.setAttribute('aria-invalid', String(isUnreadable(state.own, answer)));
    on.change(row);
  };
  /** The teacher's own marks, or those that are computed. */
  const showOwn = () => {
    if (row.settled?.isOwn === false && readMarks(state.own, answer.marks) !== undefined) state.own = '';
    if (state.own.trim() === '') own.value = row.settled === undefined ? '' : writeMarks(row.settled.marks);
  };

  own.addEventListener('input', () => {
    state.own = own.value;
    update();
  });
  own.addEventListener('blur', showOwn);
  listenToRow(row, { element, own }, on);
  return Object.assign(row, {
    element,
    focus(isOwn) {
      item.scrollIntoView({ block: 'center' });
      if (!isOwn) return field.focus();
      own.focus();
      own.select();
    },
    clear() {
      Object.assign(state, { entry: '', own: '' });
      field.show('');
      update();
    },
  });
}

function listenToRow(row, { element, own }, on) {
  element.addEventListener('focusin', () => on.enter(row));
  element.addEventListener('change', () => on.settle(row));
  element.addEventListener('click', ({ target }) => {
    if (target.closest('button') !== null) on.settle(row);
  });
  element.addEventListener('keydown', (event) => {
    if (event.key !== 'Enter' || event.isComposing || event.target.matches('button')) return;
    event.preventDefault();
    on.go(row, event.shiftKey ? -1 : 1, event.target === own);
  });
}
