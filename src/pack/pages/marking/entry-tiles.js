import { make } from './make-element.js';
import { BLANK, readMarks, writeMarks } from './mark-answer.js';

/** Marks for a drawing are offered in halves up to this many, in whole ones beyond. */
const MOST_WITH_HALVES = 3;

const listMarks = (most) => {
  const step = most > MOST_WITH_HALVES ? 1 : 0.5;
  return Array.from({ length: most / step + 1 }, (_, index) => writeMarks(most - index * step));
};

/** What can be tapped for an answer, in order. */
function listTiles({ kind, letters, rows, marks }) {
  if (kind === 'options') return [...letters, BLANK];
  const offered = kind === 'lines' ? [...new Set([...rows, 0])].map(writeMarks) : listMarks(marks);
  return [...offered, BLANK];
}

/** Marks typed digit by digit; a point or a comma adds a half. */
function typeMarks(before, key, most) {
  if (key === '.' || key === ',' || key === '½') {
    const whole = readMarks(before, most) ?? 0;
    const halved = whole + 0.5;
    return Number.isInteger(whole) && halved <= most ? writeMarks(halved) : undefined;
  }
  if (!/^\d$/.test(key)) return undefined;
  return [`${before}${key}`, key].find((text) => readMarks(text, most) !== undefined);
}

/**
 * Tiles to tap, which letters and digits also choose while one of them has the focus: one of several, or as many as a
 * group may have ticked. The entry is what was chosen, joined to one text.
 * @param name Unique in the page.
 * @param onEntry Called with each new entry.
 */
export function createTiles(answer, { name, words }, onEntry) {
  const isSeveral = answer.kind === 'options' && answer.right.length > 1;
  let entry = '';
  let typed = '';

  const tiles = listTiles(answer).map((value) => {
    const input = make('input', '', { type: isSeveral ? 'checkbox' : 'radio', name, value, autocomplete: 'off' });
    const dash = make('span', '', { 'aria-hidden': 'true' }, '–');
    const face = value === BLANK ? [dash, make('span', 'visually-hidden', {}, words.blank)] : [value];
    const element = make('label', 'marking-tile', {}, input, make('span', '', {}, ...face));
    input.addEventListener('change', () => choose(isSeveral ? toggle(value) : value));
    return { value, input, element };
  });

  const show = (next) => {
    entry = next;
    const chosen = answer.kind === 'options' ? [...next] : [next];
    for (const { value, input } of tiles) input.checked = chosen.includes(value);
  };

  const choose = (next) => {
    show(next);
    onEntry(next);
  };

  /** Letters in the order of the paper; a dash stands alone. */
  const toggle = (value) => {
    if (value === BLANK) return entry === BLANK ? '' : BLANK;
    return [...answer.letters].filter((letter) => entry.includes(letter) !== (letter === value)).join('');
  };

  const readKey = (key) => {
    if (key === '=') return answer.right ?? writeMarks(answer.marks);
    if (/^[-–]$/.test(key)) return BLANK;
    if (key === 'Backspace' || key === 'Delete') return '';
    if (answer.kind !== 'options') return typeMarks(typed, key, answer.marks);
    const letter = key.toUpperCase();
    if (!answer.letters.includes(letter)) return undefined;
    return isSeveral ? toggle(letter) : letter;
  };

  const element = make('div', 'marking-tiles', {}, ...tiles.map((tile) => tile.element));
  element.addEventListener('focusin', ({ relatedTarget }) => {
    if (!element.contains(relatedTarget)) typed = '';
  });
  element.addEventListener('keydown', (event) => {
    if (event.ctrlKey || event.altKey || event.metaKey) return;
    const next = readKey(event.key);
    if (next === undefined) return;
    event.preventDefault();
    typed = next;
    choose(next);
    focus();
    element.dispatchEvent(new Event('change', { bubbles: true }));
  });
  const focus = () => (tiles.find(({ input }) => input.checked) ?? tiles[0]).input.focus();

  return {
    element,
    show,
    focus,
    inputs: tiles.map(({ input }) => input),
  };
}
