import { fillWords, make, makeButton } from './make-element.js';
import { addMarks, writeMarks } from './mark-answer.js';

/** Marks of a group or of the room, out of those that are marked; `none` while nothing is. */
export function sayMarks({ marks, most, marked }, words, none = '–') {
  return marked === 0 ? none : fillWords(words.marksOf, { marks: writeMarks(marks), most });
}

/** The same, and how many answers have no marks yet. */
function sayProgress(rows, words) {
  const sum = addMarks(rows);
  const open = sum.open === 0 || sum.marked === 0 ? [] : [fillWords(words.open, { n: sum.open })];
  return [sayMarks(sum, words), ...open].join(' · ');
}

/**
 * The head of the marking help: how it goes, in which order, and a button for each paper, which the first letter of the
 * group's name finds.
 * @param papers Each group with its rows.
 * @returns `focusNext` goes to the next paper after a given one that is not done; without one, to the first.
 */
export function createPanel({ id, papers, words, title }, onPaper) {
  const createWay = (value, text, isFirst) => {
    const input = make('input', '', { type: 'radio', name: `${id}-way`, value, autocomplete: 'off' });
    input.checked = isFirst;
    return { input, element: make('label', 'marking-way', {}, input, ' ', text) };
  };
  const ways = [createWay('paper', words.byPaper, true), createWay('question', words.byQuestion, false)];
  const buttons = papers.map((paper) => {
    const state = make('span', 'marking-state', {});
    return { paper, state, element: makeButton('marking-paper', [paper.group, ' ', state], () => onPaper(paper)) };
  });
  const list = make('p', 'marking-papers', {}, ...buttons.map((button) => button.element));
  /** Buttons in order, from the one after a given place on, and round. */
  const listFrom = (place) => [...buttons.slice(place + 1), ...buttons.slice(0, place + 1)];
  const focusNext = (after) => {
    const from = listFrom(papers.indexOf(after));
    (from.find(({ paper }) => addMarks(paper.rows).open > 0) ?? from[0]).element.focus();
  };
  list.addEventListener('keydown', ({ key, target, ctrlKey, altKey, metaKey }) => {
    if (key.length > 1 || key === ' ' || ctrlKey || altKey || metaKey) return;
    const isMeant = ({ paper }) => paper.group.toLowerCase().startsWith(key.toLowerCase());
    listFrom(buttons.findIndex((button) => button.element === target))
      .find(isMeant)
      ?.element.focus();
  });
  const element = make(
    'div',
    'marking-panel screen-only',
    { role: 'group', 'aria-label': fillWords(words.named, { name: words.title, what: title }) },
    make('ul', 'marking-how', {}, ...words.how.map((line) => make('li', '', {}, line))),
    make('fieldset', 'marking-ways', {}, make('legend', '', {}, words.enterGoes), ...ways.map((way) => way.element)),
    list,
  );
  return {
    element,
    isByQuestion: () => ways[1].input.checked,
    focusNext,
    show() {
      for (const { paper, state } of buttons) state.textContent = sayProgress(paper.rows, words);
    },
  };
}

/** The line that stays in sight while marking: this paper and the whole room, and ways to the list and to the sheet. */
export function createBar({ papers, words }, { onPapers, onSheet }) {
  const now = make('span', 'marking-now', {});
  const room = make('span', 'marking-all', {});
  const element = make(
    'div',
    'marking-bar screen-only',
    {},
    make('p', '', {}, now, ' ', room),
    make(
      'p',
      '',
      {},
      makeButton('marking-to', [words.toPapers], onPapers),
      ' ',
      makeButton('marking-to', [words.toSheet], onSheet),
    ),
  );
  return {
    element,
    show({ group, rows }) {
      const done = papers.filter((paper) => addMarks(paper.rows).open === 0).length;
      const all = addMarks(papers.flatMap((paper) => paper.rows));
      const papersDone = fillWords(words.done, { n: done, length: papers.length });
      now.replaceChildren(make('b', '', {}, group), ` ${sayProgress(rows, words)}`);
      const what = [sayMarks(all, words), papersDone].join(' · ');
      room.textContent = fillWords(words.named, { name: words.room, what });
    },
  };
}

/** Below the mark sheet: print it, and clear all, which asks once. */
export function createActions({ words }, { onPrint, onClear }) {
  const asking = make('p', 'marking-asking', { role: 'group', hidden: '' });
  const clear = makeButton('marking-clear', [words.clear], () => {
    ask(true);
    no.focus();
  });
  const ask = (isAsking) => {
    asking.hidden = !isAsking;
    clear.hidden = isAsking;
  };
  const stop = () => {
    ask(false);
    clear.focus();
  };
  const yes = makeButton('marking-yes', [words.clearYes], () => {
    stop();
    onClear();
  });
  const no = makeButton('marking-no', [words.clearNo], stop);
  asking.append(make('span', '', {}, words.clearAsk), ' ', yes, ' ', no);
  asking.setAttribute('aria-label', words.clearAsk);
  asking.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') stop();
  });
  const print = makeButton('marking-print', [words.print], onPrint);
  return make('div', 'marking-actions screen-only', {}, print, ' ', clear, asking);
}
