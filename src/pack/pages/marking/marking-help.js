import { createAnswerRow } from './answer-row.js';
import { fillWords, make } from './make-element.js';
import { addMarks } from './mark-answer.js';
import { createMarkTable, createReasonList } from './mark-table.js';
import { createActions, createBar, createPanel, sayMarks } from './marking-panel.js';

/** Quizzes with something entered that would be lost. */
const unsaved = new Set();
const askFirst = (event) => event.preventDefault();

/** Nothing is kept outside of the page: whoever leaves it with marks in it is asked once. */
function guardEntries(section, hasEntries) {
  if (hasEntries) unsaved.add(section);
  else unsaved.delete(section);
  if (unsaved.size > 0) addEventListener('beforeunload', askFirst);
  else removeEventListener('beforeunload', askFirst);
}

const isEntered = ({ state }) => `${state.entry}${state.own}`.trim() !== '';

/** What is said aloud of an answer when it is done with, and of the paper's total. */
function sayAnswer({ answer, settled, element, paper }, words) {
  const parts = [...element.querySelectorAll('.marking-judgement, .marking-note')];
  const [first, ...more] = parts.map(({ textContent }) => textContent.trim().replace(/\.$/, ''));
  const worth = settled === undefined ? [] : [sayMarks({ ...settled, most: answer.marks, marked: 1 }, words)];
  const sum = addMarks(paper.rows);
  const open = sum.open === 0 ? [] : [fillWords(words.open, { n: sum.open })];
  return [
    first,
    ...worth,
    ...more,
    fillWords(words.named, { name: paper.group, what: sayMarks(sum, words) }),
    ...open,
  ].join('. ');
}

/** A paper for each group: a row for each answer, put into the key, and the total beside the group's name. */
function createPapers(section, words, on) {
  const data = JSON.parse(section.querySelector('.marking-answers').textContent);
  const sections = [...section.querySelectorAll('.group-key')];
  return data.map(({ group, answers }, number) => {
    const items = [...sections[number].querySelectorAll('.key-answers > li')];
    const total = make('p', 'marking-total', {});
    sections[number].querySelector('.group-key-head').append(total);
    const paper = { group, total };
    paper.rows = answers.map((answer, index) => {
      const place = fillWords(words.place, { group, n: answer.number });
      const id = `${section.id}-${number + 1}-${answer.number}`;
      const row = createAnswerRow(answer, { item: items[index], place, id, words }, on);
      return Object.assign(row, { paper });
    });
    return paper;
  });
}

/** Rows in the order in which Enter goes through them. */
function listRows(papers, isByQuestion) {
  if (!isByQuestion) return papers.flatMap(({ rows }) => rows);
  return papers[0].rows.flatMap((_, question) => papers.map(({ rows }) => rows[question]));
}

/** The first answer of a paper that has no marks yet, or its first. */
function goToPaper({ rows }) {
  (rows.find(({ settled }) => settled === undefined) ?? rows[0]).focus(false);
}

/** The rest of the page is not printed with the mark sheet. */
function printSheet(section) {
  const root = document.documentElement;
  section.classList.add('is-printed');
  root.classList.add('prints-marks');
  const stop = () => {
    section.classList.remove('is-printed');
    root.classList.remove('prints-marks');
  };
  addEventListener('afterprint', stop, { once: true });
  print();
}

/** Everything that helps to mark one quiz, put into its part of the key. `start` goes to the list of papers. */
export function createHelp(section, words) {
  const sheet = section.querySelector('.mark-sheet');
  const region = sheet.querySelector('[tabindex]');
  const title = section.querySelector('h2').textContent;
  const says = make('p', 'visually-hidden', { 'aria-live': 'polite' });
  let isQuiet = true;

  /** The same words twice are said once. */
  const say = (text) => {
    if (says.textContent !== text) says.textContent = text;
  };
  const goToSheet = () => {
    sheet.scrollIntoView({ block: 'nearest' });
    region.focus();
  };
  const on = {
    enter: ({ paper }) => bar.show(paper),
    change: ({ paper }) => {
      if (!isQuiet) refresh(paper);
    },
    settle: (row) => {
      if (isEntered(row)) say(sayAnswer(row, words));
    },
    go: (row, direction, isOwn) => {
      on.settle(row);
      const isByQuestion = panel.isByQuestion();
      const rows = listRows(papers, isByQuestion);
      const next = rows[rows.indexOf(row) + direction];
      const isDone = papers.every((paper) => addMarks(paper.rows).open === 0);
      // Papers lie in any order: after each, the teacher says which is the next.
      if (direction > 0 && !isByQuestion && next?.paper !== row.paper && !isDone) panel.focusNext(row.paper);
      else if (next !== undefined) next.focus(isOwn);
      else if (direction > 0) goToSheet();
    },
  };
  const clear = () => {
    isQuiet = true;
    for (const { rows } of papers) for (const row of rows) row.clear();
    isQuiet = false;
    refresh(papers[0]);
    say(words.cleared);
  };

  const papers = createPapers(section, words, on);
  const panel = createPanel({ id: section.id, papers, words, title }, goToPaper);
  const bar = createBar({ papers, words }, { onPapers: () => panel.focusNext(), onSheet: goToSheet });
  const table = createMarkTable(sheet.querySelector('table'), papers, words);
  const reasons = createReasonList(sheet, papers, words);
  const refresh = (paper) => {
    for (const { rows, total } of papers) total.textContent = sayMarks(addMarks(rows), words, '');
    for (const part of [table, reasons, panel]) part.show();
    bar.show(paper);
    guardEntries(
      section,
      papers.some(({ rows }) => rows.some(isEntered)),
    );
  };

  section.querySelector('.quiz-key-head').after(panel.element);
  region.after(createActions({ words }, { onPrint: () => printSheet(section), onClear: clear }));
  section.append(bar.element, says);
  isQuiet = false;
  refresh(papers[0]);
  return { start: () => panel.focusNext() };
}
