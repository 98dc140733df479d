import { describe, expect, it } from 'vitest';
import { computePlaceInGroup } from '../../src/rhythm/place-in-group.ts';
import { selectRun } from '../../src/rhythm/select-run.ts';
import { sampleRun } from './run-nights.ts';

const placesOf = (written: string, week: readonly number[] = []) => {
  const selection = selectRun({ run: sampleRun, months: [], monthsName: 'Months' }, written, { week });
  if (!('groups' in selection)) throw new Error(selection.kind);
  return selection.groups.map((group) => group.items.map((_, index) => computePlaceInGroup(group, index)));
};

describe('computePlaceInGroup', () => {
  it('is the place in the calendar, whatever was selected', () => {
    expect(placesOf('Reed..Hidden Moon')).toEqual([[2, 3], [1, 2], [1]]);
    expect(placesOf('this-week', [2, 2, 3, 5])).toEqual([
      [2, 2],
      [1, 3],
    ]);
  });

  it('refuses an item that is not there', () => {
    const group = { kind: 'months', name: 'Months', items: [], wholeLength: 12, firstInGroup: 1 } as const;
    expect(() => computePlaceInGroup(group, 0)).toThrow(RangeError);
  });
});
