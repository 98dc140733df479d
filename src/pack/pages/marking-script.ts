import answerRow from './marking/answer-row.js?raw';
import entryLine from './marking/entry-line.js?raw';
import entryTiles from './marking/entry-tiles.js?raw';
import makeElement from './marking/make-element.js?raw';
import markAnswer from './marking/mark-answer.js?raw';
import markPapers from './marking/mark-papers.js?raw';
import markTable from './marking/mark-table.js?raw';
import markingHelp from './marking/marking-help.js?raw';
import markingPanel from './marking/marking-panel.js?raw';
import verdict from './marking/verdict.js?raw';

/** Each file after those that it imports from. */
const PARTS = [
  markAnswer,
  makeElement,
  entryTiles,
  entryLine,
  verdict,
  answerRow,
  markTable,
  markingPanel,
  markingHelp,
  markPapers,
];

/**
 * The script of the marking help: its modules as one plain script, since a page that is opened from a folder cannot
 * load modules. They have no two names alike.
 */
export const markingScript = `{\n${PARTS.map(dropModuleWords).join('')}}\n`;

/** A module's text without its imports, and without the words that offer its names to others. */
export function dropModuleWords(module: string): string {
  return module.replace(/^import .*?;\n+/gms, '').replace(/^export /gm, '');
}
