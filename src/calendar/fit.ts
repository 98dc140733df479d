import type { RunNight } from './almanac-types.ts';
import type { NightGroup } from './rules.ts';

/** The name a night takes. */
interface FittedName {
  readonly night: RunNight;
  /** True when an earlier night of the month already has this name. */
  readonly repeat: boolean;
}

/** Lists the named nights of all groups in order, each with its place in the run. */
export function computeRun(groups: readonly NightGroup[]): readonly RunNight[] {
  const run: RunNight[] = [];
  for (const [groupIndex, group] of groups.entries()) {
    for (const [nightIndex, night] of group.nights.entries()) {
      const place = { groupNumber: groupIndex + 1, numberInGroup: nightIndex + 1 };
      run.push({ ...night, number: run.length + 1, group: group.name, ...place });
    }
  }
  return run;
}

/**
 * The name of a night of a month. Night 1 takes the first name and so on; when the names run out, the last one is
 * repeated; when the month is shorter than the list, the last names wait for a longer month.
 * @param run One name at least.
 * @param nightOfMonth 1 or more.
 */
export function computeFittedName(run: readonly RunNight[], nightOfMonth: number): FittedName {
  const night = run[Math.min(nightOfMonth, run.length) - 1];
  if (night === undefined) throw new RangeError(`Night ${nightOfMonth} of a list of ${run.length} has no name.`);
  return { night, repeat: nightOfMonth > run.length };
}
