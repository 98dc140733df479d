import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { selectNights } from '../../src/rhythm/select-nights.ts';
import { sampleRun } from './run-nights.ts';

const moment = { tonight: 3, week: [6, 7, 1, 2] };

const select = (written: string, at: Parameters<typeof selectNights>[2] = moment) => {
  const selection = selectNights(sampleRun, written, at);
  return 'nights' in selection
    ? { kind: selection.kind, numbers: selection.nights.map((night) => night.number), wraps: selection.wraps }
    : selection;
};

describe('selectNights', () => {
  it.each([
    ['all', 'all', [1, 2, 3, 4, 5, 6, 7], false],
    ['up-to-tonight', 'up-to-tonight', [1, 2, 3], false],
    ['this-week', 'this-week', [6, 7, 1, 2], true],
    ['Dark Water', 'group', [1, 2], false],
    ['Reed', 'night', [4], false],
    ['  Hidden   Moon ', 'night', [1], false],
    ['First Thread..Reed', 'range', [2, 3, 4], false],
    ['First Thread .. Reed', 'range', [2, 3, 4], false],
    ['Reed..Reed', 'range', [4], false],
    ['Round Moon..First Thread', 'range', [6, 7, 1, 2], true],
    ['Hidden Moon..High Water', 'range', [1, 2, 3, 4, 5, 6, 7], false],
    ['High Water..Dark Water', 'range', [6, 7, 1, 2], true],
  ])('reads `%s`', (written, kind, numbers, wraps) => {
    expect(select(written)).toEqual({ kind, numbers, wraps });
  });

  it('takes a name that a group and a night share for the group alone, for the night in a range', () => {
    expect(select('Thin Light')).toEqual({ kind: 'group', numbers: [3, 4, 5], wraps: false });
    expect(select('Thin Light..Round Moon')).toEqual({ kind: 'range', numbers: [5, 6], wraps: false });
  });

  it('compares names in one Unicode form', () => {
    expect(select('E\u0301pave')).toEqual({ kind: 'night', numbers: [7], wraps: false });
  });

  it('parts a range where both sides are known, though a name holds two dots', () => {
    const dotted = sampleRun.map((night) => (night.number === 2 ? { ...night, name: 'Wait.. now' } : night));
    const selection = selectNights(dotted, 'Wait.. now..Reed', {});
    expect('nights' in selection && selection.nights.map((night) => night.number)).toEqual([2, 3, 4]);
  });

  it.each([
    ['', { kind: 'missing-name' }],
    ['..Reed', { kind: 'missing-name' }],
    ['Reed..', { kind: 'missing-name' }],
    ['Lantern', { kind: 'unknown-name', name: 'Lantern' }],
    ['Read', { kind: 'unknown-name', name: 'Read', hint: 'Reed' }],
    ['Darc Water', { kind: 'unknown-name', name: 'Darc Water', hint: 'Dark Water' }],
    ['up-to-tonite', { kind: 'unknown-name', name: 'up-to-tonite', hint: 'up-to-tonight' }],
    ['month', { kind: 'unknown-name', name: 'month', hint: 'months' }],
    ['round moon', { kind: 'unknown-name', name: 'round moon', hint: 'Round Moon' }],
    ['ALL', { kind: 'unknown-name', name: 'ALL', hint: 'all' }],
    ['Reed..Rund Moon', { kind: 'unknown-name', name: 'Rund Moon', hint: 'Round Moon' }],
    ['High..Lantern', { kind: 'unknown-name', name: 'High', hint: 'High Water' }],
    ['reed..Rund Moon', { kind: 'unknown-name', name: 'reed', hint: 'Reed' }],
    ['all..Reed', { kind: 'unknown-name', name: 'all' }],
  ])('tells what is wrong with `%s`', (written, fault) => {
    expect(select(written)).toEqual(fault);
  });

  it('says when tonight or the week is not known', () => {
    expect(select('up-to-tonight', {})).toEqual({ kind: 'no-tonight' });
    expect(select('this-week', {})).toEqual({ kind: 'no-week' });
    expect(select('this-week', { week: [] })).toEqual({ kind: 'no-week' });
  });

  it('throws for a number that is not in the run', () => {
    expect(() => select('up-to-tonight', { tonight: 8 })).toThrow(RangeError);
    expect(() => select('this-week', { week: [0] })).toThrow(RangeError);
  });

  it('gives every range in order, each night once, from its first name to its last', () => {
    const place = fc.integer({ min: 0, max: sampleRun.length - 1 });
    fc.assert(
      fc.property(place, place, (first, last) => {
        const names = [sampleRun[first]?.name, sampleRun[last]?.name];
        const selection = selectNights(sampleRun, names.join('..'), {});
        if (!('nights' in selection)) throw new Error(selection.kind);
        const numbers = selection.nights.map((night) => night.number);
        const expected = (((last - first) % sampleRun.length) + sampleRun.length) % sampleRun.length;
        expect(numbers).toEqual(
          Array.from({ length: expected + 1 }, (_, step) => ((first + step) % sampleRun.length) + 1),
        );
        expect(selection.wraps).toBe(last < first);
      }),
    );
  });
});
