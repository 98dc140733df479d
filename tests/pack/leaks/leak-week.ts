import type { Diagnostic } from '../../../src/content/diagnostic.ts';
import type { ResolvedWeek } from '../../../src/lesson/model.ts';
import { resolveWeek, type WeekFiles, type WeekSetting } from '../../../src/lesson/resolve-week.ts';
import { sha256 } from '../../../src/node/sha256.ts';
import { unpack } from '../../../src/node/unpack.ts';
import { createLeakFinder, type LeakFinder } from '../../../src/pack/leaks/find-leaks.ts';
import type { PackFile } from '../../../src/pack/pack-plan.ts';
import { planLearnersPages } from '../../../src/pack/plan-pages.ts';

/** A week with the files that learners get, and the search of it. */
export interface LeakWeek {
  readonly week: ResolvedWeek;
  readonly finder: LeakFinder;
  readonly files: readonly PackFile[];
  /** Findings about the files, or about others in their place. */
  find(files?: readonly PackFile[], origin?: 'planned' | 'built'): Diagnostic[];
}

/** Resolves a week and plans its pages for learners. Throws where there is a mistake in it. */
export function openLeakWeek(files: WeekFiles, setting: WeekSetting): LeakWeek {
  const { week, diagnostics } = resolveWeek(files, setting);
  if (week === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const finder = createLeakFinder(week, { sources: files.lessons, weekFolder: `lessons/${week.plan.id}`, unpack });
  const planned = planLearnersPages(week, sha256.base64);
  return {
    week,
    finder,
    files: planned,
    find: (searched = planned, origin = 'planned') =>
      finder.find({ origin, files: searched, showPath: (path) => `pack/${path}` }),
  };
}
