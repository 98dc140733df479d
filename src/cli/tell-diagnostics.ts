import type { Diagnostic } from '../content/diagnostic.ts';
import type { Terminal } from './terminal.ts';

/** Prints findings, a line each, in order of file and place: `lessons/a/monday.md:12:3 error: …`. */
export function tellDiagnostics(diagnostics: readonly Diagnostic[], terminal: Terminal): void {
  for (const { place, severity, message, rule, related } of sortDiagnostics(diagnostics)) {
    const where = terminal.emphasise(`${place.file}:${place.line}:${place.column}`, 'bold', 'tell');
    const kind = terminal.emphasise(severity, severity === 'error' ? 'red' : 'yellow', 'tell');
    const other = related === undefined ? '' : ` (see ${related.file}:${related.line}:${related.column})`;
    terminal.tell(`${where} ${kind}: ${message}${other} ${terminal.emphasise(`[${rule}]`, 'dim', 'tell')}`);
  }
}

/** By file, line, column; files in code-point order. */
export function sortDiagnostics(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return [...diagnostics].sort(
    (a, b) =>
      (a.place.file < b.place.file ? -1 : a.place.file > b.place.file ? 1 : 0) ||
      a.place.line - b.place.line ||
      a.place.column - b.place.column,
  );
}
