import type { Diagnostic } from '../content/diagnostic.ts';
import { loadLibrary } from '../content/library.ts';
import type { OpenLibrary } from '../content/open-library.ts';
import { checkAlikeGestures } from '../lesson/check-alike-gestures.ts';
import { readContent } from '../node/read-content.ts';
import { showPath } from '../node/show-path.ts';
import type { Arguments } from './arguments.ts';
import { findWeekLeaks } from './find-week-leaks.ts';
import { CONTENT_FOLDER, findWeekFolders, listWeekFolders, OUTPUT_FOLDER, openSetting } from './open-weeks.ts';
import { resolveWeeks } from './resolve-weeks.ts';
import { sortDiagnostics, tellDiagnostics } from './tell-diagnostics.ts';
import type { Terminal } from './terminal.ts';

/**
 * Looks for mistakes in the named weeks, or in all weeks and all content files; and for answers in what learners would
 * get of them, and in what they would get of packs that were built. @returns The exit status.
 */
export function check(given: Arguments, terminal: Terminal): number {
  const { names, options } = given;
  const everything = names.length === 0;
  const folders = everything ? listWeekFolders() : findWeekFolders(names);
  const setting = openSetting(given);
  const found = everything ? checkContent(options.content ?? CONTENT_FOLDER, setting.library) : [];
  for (const { read, week, diagnostics } of resolveWeeks(folders, setting)) {
    found.push(...diagnostics);
    if (week !== undefined) found.push(...findWeekLeaks(week, read, options.out ?? OUTPUT_FOLDER));
  }
  const diagnostics = sortDiagnostics(leaveOutRepeats(found));
  const errors = diagnostics.filter(({ severity }) => severity === 'error').length;
  if (options.json === true) terminal.print(JSON.stringify(diagnostics, null, 2));
  else {
    tellDiagnostics(diagnostics, terminal);
    if (options.quiet !== true) terminal.print(summarise(folders.map(showPath), errors, diagnostics.length - errors));
  }
  return errors === 0 ? 0 : 1;
}

/** What is wrong in any content file, whether or not a week needs it. */
function checkContent(folder: string, library: OpenLibrary): Diagnostic[] {
  const { diagnostics } = loadLibrary(readContent(folder));
  return [...diagnostics, ...library.gestureIds.flatMap((id) => checkAlikeGestures(library, id))];
}

/** A content file that a week needs is read twice when everything is checked. */
function leaveOutRepeats(diagnostics: readonly Diagnostic[]): Diagnostic[] {
  return [...new Map(diagnostics.map((diagnostic) => [JSON.stringify(diagnostic), diagnostic])).values()];
}

function summarise(weeks: readonly string[], errors: number, others: number): string {
  const counted = `${weeks.length} ${weeks.length === 1 ? 'week' : 'weeks'}${weeks.length === 0 ? '' : ` (${weeks.join(', ')})`}`;
  if (errors + others === 0) return `${counted}: no mistakes found.`;
  return `${counted}: ${errors} ${errors === 1 ? 'mistake' : 'mistakes'}, ${others} ${others === 1 ? 'remark' : 'remarks'}.`;
}
