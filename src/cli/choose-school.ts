import type { OpenedSchool, OpenLibrary } from '../content/open-library.ts';
import { tellDiagnostics } from './tell-diagnostics.ts';
import type { Terminal } from './terminal.ts';
import { UsageError } from './usage-error.ts';

/**
 * The id of the school that a command means: the one it names, or else the home school.
 * @throws UsageError when that is none, or more than one.
 */
export function chooseSchool(command: string, library: OpenLibrary, named: string | undefined): string {
  const homes = library.findHomeSchools();
  const id = named ?? (homes.length === 1 ? homes[0] : undefined);
  if (id !== undefined) return id;
  const ids = library.schools.ids.join(', ') || 'none: there are no files';
  throw new UsageError(
    `\`${command}\` needs a school; write \`--school ID\` with one of ${ids}, or \`home: true\` in one school file`,
  );
}

/** A school with its calendar, and what is wrong in their files told; nothing where a mistake keeps them shut. */
export function openChosenSchool(
  library: OpenLibrary,
  id: string,
  calendarId: string | undefined,
  terminal: Terminal,
): OpenedSchool | undefined {
  const opened = library.openSchool(id, calendarId);
  tellDiagnostics(opened?.diagnostics ?? [], terminal);
  return opened?.value;
}
