import type { RunNight } from '../../src/calendar/almanac-types.ts';

/** Builds a run from groups of names; refuses an empty group. */
export const buildRun = (groups: Readonly<Record<string, readonly string[]>>): RunNight[] => {
  const run: RunNight[] = [];
  Object.entries(groups).forEach(([group, names], groupIndex) => {
    if (names.length === 0) throw new Error(`group ${group} is empty`);
    names.forEach((name, index) => {
      run.push({ name, number: run.length + 1, group, groupNumber: groupIndex + 1, numberInGroup: index + 1 });
    });
  });
  return run;
};

export const sampleRun = buildRun({
  'Dark Water': ['Hidden Moon', 'First Thread'],
  'Thin Light': ['Fishbone', 'Reed', 'Thin Light'],
  'High Water': ['Round Moon', 'Épave'],
});
