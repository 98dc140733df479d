import { describe, expect, it } from 'vitest';
import type { RunNight } from '../../src/calendar/almanac-types.ts';
import { selectRun } from '../../src/rhythm/select-run.ts';
import { sampleRun } from './run-nights.ts';

const calendar = {
  run: sampleRun,
  months: [{ name: 'Frost Month' }, { name: 'Kite Month' }, { name: 'Reed Month' }],
  monthsName: 'Months',
};
const moment = { tonight: 4, week: [6, 7, 1, 2] };

/** Groups as `Name: numbers (first place of whole length)`. */
const select = (written: string, run: readonly RunNight[] = sampleRun, at = moment) => {
  const selection = selectRun({ ...calendar, run }, written, at);
  if (!('groups' in selection)) return selection;
  return selection.groups.map(
    ({ name, items, firstInGroup, wholeLength }) =>
      `${name}: ${items.map(({ number }) => number).join(' ')} (${firstInGroup} of ${wholeLength})`,
  );
};

describe('selectRun', () => {
  it.each([
    ['all', ['Dark Water: 1 2 (1 of 2)', 'Thin Light: 3 4 5 (1 of 3)', 'High Water: 6 7 (1 of 2)']],
    ['up-to-tonight', ['Dark Water: 1 2 (1 of 2)', 'Thin Light: 3 4 (1 of 3)']],
    ['this-week', ['High Water: 6 7 (1 of 2)', 'Dark Water: 1 2 (1 of 2)']],
    ['Thin Light', ['Thin Light: 3 4 5 (1 of 3)']],
    ['Reed', ['Thin Light: 4 (2 of 3)']],
    ['First Thread..Reed', ['Dark Water: 2 (2 of 2)', 'Thin Light: 3 4 (1 of 3)']],
    ['months', ['Months: 1 2 3 (1 of 3)']],
    [
      ' months-then-nights ',
      ['Months: 1 2 3 (1 of 3)', 'Dark Water: 1 2 (1 of 2)', 'Thin Light: 3 4 5 (1 of 3)', 'High Water: 6 7 (1 of 2)'],
    ],
  ])('gathers `%s` by group', (written, groups) => {
    expect(select(written)).toEqual(groups);
  });

  it('comes to a group twice where a run wraps around into it', () => {
    expect(select('Reed..Fishbone')).toEqual([
      'Thin Light: 4 5 (2 of 3)',
      'High Water: 6 7 (1 of 2)',
      'Dark Water: 1 2 (1 of 2)',
      'Thin Light: 3 (1 of 3)',
    ]);
    const single = sampleRun.filter(({ group }) => group === 'Dark Water');
    expect(select('First Thread..Hidden Moon', single)).toEqual(['Dark Water: 2 (2 of 2)', 'Dark Water: 1 (1 of 2)']);
  });

  it('takes the nights of a week as they are: a name twice, a name left out', () => {
    const week = { tonight: 1, week: [1, 1, 3, 5] };
    expect(select('this-week', sampleRun, week)).toEqual(['Dark Water: 1 1 (1 of 2)', 'Thin Light: 3 5 (1 of 3)']);
  });

  it('says what the items are', () => {
    const withGesture = sampleRun.map((night) => (night.number === 1 ? { ...night, gesture: 'cover' } : night));
    const selection = selectRun({ ...calendar, run: withGesture }, 'months-then-nights', moment);
    if (!('groups' in selection)) throw new Error(selection.kind);
    expect(selection.groups.map(({ kind }) => kind)).toEqual(['months', 'nights', 'nights', 'nights']);
    expect(selection.groups[0]?.items[1]).toEqual({ kind: 'month', name: 'Kite Month', number: 2 });
    expect(selection.groups[1]?.items).toEqual([
      { kind: 'night', name: 'Hidden Moon', number: 1, gesture: 'cover' },
      { kind: 'night', name: 'First Thread', number: 2 },
    ]);
  });

  it('ends with tonight where it is done to say the sentence, and only there', () => {
    const endings = ['all', 'up-to-tonight', 'this-week', 'Reed', 'Thin Light', 'months', 'months-then-nights'].filter(
      (written) => {
        const selection = selectRun(calendar, written, moment);
        return 'groups' in selection && selection.endsTonight;
      },
    );
    expect(endings).toEqual(['up-to-tonight', 'months-then-nights']);
    expect(selectRun(calendar, 'months-then-nights', {})).toMatchObject({ endsTonight: false });
  });

  it.each([
    ['Kite Month', { kind: 'unknown-name', name: 'Kite Month', hint: 'months' }],
    ['month-then-nights', { kind: 'unknown-name', name: 'month-then-nights', hint: 'months-then-nights' }],
    ['Kite Month..Reed', { kind: 'unknown-name', name: 'Kite Month' }],
    ['months..Reed', { kind: 'unknown-name', name: 'months' }],
    ['', { kind: 'missing-name' }],
  ])('tells what is wrong with `%s`', (written, fault) => {
    expect(select(written)).toEqual(fault);
  });

  it('takes a night that is called like a month for the night', () => {
    const run = sampleRun.map((night) => (night.number === 4 ? { ...night, name: 'Kite Month' } : night));
    expect(select('Kite Month', run)).toEqual(['Thin Light: 4 (2 of 3)']);
  });

  it('passes on what is not known of the moment', () => {
    expect(selectRun(calendar, 'up-to-tonight', {})).toEqual({ kind: 'no-tonight' });
    expect(selectRun(calendar, 'this-week', {})).toEqual({ kind: 'no-week' });
    expect(() => selectRun(calendar, 'up-to-tonight', { tonight: 8 })).toThrow(RangeError);
  });
});
