import { describe, expect, it } from 'vitest';
import { computeFittedName, computeRun } from '../../src/calendar/fit.ts';

const RUN = computeRun([
  { name: 'Low', meaning: 'of the group', nights: [{ name: 'A', say: 'ay', gesture: 'cover' }, { name: 'B' }] },
  { name: 'High', nights: [{ name: 'C', meaning: 'of the night' }] },
]);

describe('computeRun', () => {
  it('numbers nights through all groups and within each, and keeps what the night says of itself', () => {
    expect(RUN).toEqual([
      { name: 'A', say: 'ay', gesture: 'cover', number: 1, group: 'Low', groupNumber: 1, numberInGroup: 1 },
      { name: 'B', number: 2, group: 'Low', groupNumber: 1, numberInGroup: 2 },
      { name: 'C', meaning: 'of the night', number: 3, group: 'High', groupNumber: 2, numberInGroup: 1 },
    ]);
  });
});

describe('computeFittedName', () => {
  it('gives the nth night the nth name and repeats the last one', () => {
    const fitted = [1, 2, 3, 4, 5].map((night) => computeFittedName(RUN, night));
    expect(fitted.map(({ night }) => night.name)).toEqual(['A', 'B', 'C', 'C', 'C']);
    expect(fitted.map(({ repeat }) => repeat)).toEqual([false, false, false, true, true]);
  });

  it.each([0, -1])('refuses night %d', (night) => {
    expect(() => computeFittedName(RUN, night)).toThrow(RangeError);
  });
});
