import type { Diagnostic } from '../content/diagnostic.ts';
import type { ResolvedWeek } from '../lesson/model.ts';
import { resolveWeek, type WeekSetting } from '../lesson/resolve-week.ts';
import { type ReadWeek, readWeek } from '../node/read-content.ts';

/** A week read and resolved; `week` is absent after an error. */
export interface CheckedWeek {
  readonly read: ReadWeek;
  readonly week?: ResolvedWeek;
  /** Findings that no earlier week of the same call has brought. */
  readonly diagnostics: readonly Diagnostic[];
}

/** Reads and resolves weeks one after another, so that only one is in memory at a time. */
export function* resolveWeeks(folders: readonly string[], setting: WeekSetting): Generator<CheckedWeek> {
  // Weeks share their school's files, and those give the same findings, as the same objects, each time.
  const seen = new Set<Diagnostic>();
  for (const folder of folders) {
    const read = readWeek(folder);
    const { week, diagnostics } = resolveWeek(read, setting);
    const fresh = diagnostics.filter((diagnostic) => !seen.has(diagnostic));
    for (const diagnostic of fresh) seen.add(diagnostic);
    yield { read, diagnostics: fresh, ...(week === undefined ? {} : { week }) };
  }
}
