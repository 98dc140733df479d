import { gfmTable } from 'micromark-extension-gfm-table';
import type { TokenizeContext } from 'micromark-util-types';
import type { SyntaxExtension } from './inline-directive.ts';

/**
 * A delimiter row, with quote marks before it: dashes, and a pipe or a colon (GitHub Flavored Markdown 0.29, section
 * 4.10). Every line of this look is taken for one here; the syntax itself decides.
 */
const DELIMITER_ROW = /^(?=.*-)(?=.*[:|])[-:|> \t]+$/;

/** The syntax of tables for one parser at a time. */
export interface TableSyntax {
  readonly syntax: SyntaxExtension;
  /** To be called with each text before it is parsed. */
  prepare(source: string): void;
}

/**
 * The syntax of tables, tried only at lines with a delimiter row after them and at the rows that follow. By itself it is tried at every line, which
 * takes a tenth of the time of parsing.
 */
export function createTableSyntax(): TableSyntax {
  const syntax = gfmTable();
  const table = syntax.flow?.['null'];
  if (table === undefined || Array.isArray(table)) throw new Error('The table syntax has no single form');
  let headLines: ReadonlySet<number> = new Set();
  const tokenize: typeof table.tokenize = function (effects, ok, nok) {
    const start = table.tokenize.call(this, effects, ok, nok);
    return (code) => (headLines.has(this.now().line) || isAfterRow(this.events) ? start(code) : nok(code));
  };
  return {
    syntax: { ...syntax, flow: { ...syntax.flow, null: { ...table, tokenize } } },
    prepare(source) {
      headLines = findHeadLines(source);
    },
  };
}

/** Whether a table goes on here: each of its rows is read by itself. */
function isAfterRow(events: TokenizeContext['events']): boolean {
  const last = events.findLast(([, { type }]) => type !== 'lineEnding' && type !== 'linePrefix')?.[1].type;
  return last === 'tableHead' || last === 'tableRow';
}

/** Numbers, from 1, of the lines before a delimiter row. */
function findHeadLines(source: string): ReadonlySet<number> {
  const lines = source.split(/\r\n|\n|\r/);
  // The line with index n, from 0, is after the line with number n.
  return new Set(lines.flatMap((line, index) => (DELIMITER_ROW.test(line) ? [index] : [])));
}
