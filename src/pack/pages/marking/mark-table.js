import { copyInside, fillWords, make } from './make-element.js';
import { addMarks, judgeMarks, writeMarks } from './mark-answer.js';

/** A sum that is not complete says so. */
function showSum(cell, { marks, marked, open }, words) {
  const soFar = open === 0 ? [] : [' ', make('span', 'marking-so-far', {}, words.soFar)];
  cell.replaceChildren(...(marked === 0 ? [] : [writeMarks(marks), ...soFar]));
}

function showOf(cell, { marks, most, marked }, words) {
  cell.textContent = marked === 0 ? '' : fillWords(words.marksOf, { marks: writeMarks(marks), most });
}

/**
 * Writes marks into the mark sheet of the key: a row a group, and at its foot a row for the whole room, which is there
 * only while there is something to say.
 * @param papers For each group its rows, as `answer-row.js` makes them, in the order of the questions.
 */
export function createMarkTable(table, papers, words) {
  const lines = [...table.tBodies[0].rows].map((line) => [...line.querySelectorAll('td')]);
  const head = make('th', '', { scope: 'row' }, words.room);
  const cells = (papers[0]?.rows ?? []).map(() => make('td', '', {}));
  const sum = make('td', 'sum', {});
  const foot = make('tfoot', 'marking-room', {}, make('tr', '', {}, head, ...cells, sum));

  const showGroup = ({ rows }, line) => {
    for (const [question, { settled }] of rows.entries()) {
      line[question].textContent = settled === undefined ? '' : writeMarks(settled.marks);
    }
    showSum(line.at(-1), addMarks(rows), words);
  };
  const showRoom = () => {
    for (const [question, cell] of cells.entries())
      showOf(cell, addMarks(papers.map(({ rows }) => rows[question])), words);
    const room = addMarks(papers.flatMap(({ rows }) => rows));
    showOf(sum, room, words);
    if (room.marked === 0) foot.remove();
    else if (!foot.isConnected) table.append(foot);
  };
  return {
    show() {
      for (const [number, paper] of papers.entries()) showGroup(paper, lines[number]);
      showRoom();
    },
  };
}

/** For each question the reasons of wrong answers, each once, with the groups whose reason it was. */
function gatherReasons(papers) {
  const gathered = new Map();
  for (const { group, rows } of papers) {
    for (const { answer, reasons, settled } of rows) {
      if (settled === undefined || judgeMarks(settled.marks, answer.marks) === 'right') continue;
      for (const { reason } of reasons) {
        const key = `${answer.number} ${reason.textContent}`;
        const entry = gathered.get(key) ?? { number: answer.number, reason, groups: new Set() };
        entry.groups.add(group);
        gathered.set(key, entry);
      }
    }
  }
  return [...gathered.values()].sort((a, b) => a.number - b.number || b.groups.size - a.groups.size);
}

/** A list of what the room got wrong, below the mark sheet: what to teach once more. Gone while there is nothing in it. */
export function createReasonList(sheet, papers, words) {
  const list = make('ul', '', {});
  const section = make('div', 'marking-reasons', {}, make('h3', '', {}, words.wentWrong), list);
  return {
    show() {
      const entries = gatherReasons(papers);
      const lines = entries.map(({ number, reason, groups }) => {
        const lead = make('b', '', {}, fillWords(words.question, { n: number }));
        return make('li', '', {}, lead, ' · ', ...copyInside(reason), ` (${[...groups].join(', ')})`);
      });
      list.replaceChildren(...lines);
      if (entries.length === 0) section.remove();
      else if (!section.isConnected) sheet.append(section);
    },
  };
}
