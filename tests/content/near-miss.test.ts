import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { countEdits, findNearMiss } from '../../src/content/near-miss.ts';

describe('countEdits', () => {
  it.each([
    ['', '', 0],
    ['', 'abc', 3],
    ['moon', 'moon', 0],
    ['mon', 'moon', 1],
    ['mooon', 'moon', 1],
    ['noon', 'moon', 1],
    ['omon', 'moon', 1],
    ['ca', 'abc', 3],
    ['kitten', 'sitting', 3],
  ])('%s to %s takes %i', (from, to, edits) => {
    expect(countEdits(from, to)).toBe(edits);
  });

  it('is the same both ways, zero only for equal words, and at most the longer length', () => {
    const word = fc.string({ maxLength: 12 });
    fc.assert(
      fc.property(word, word, (a, b) => {
        const edits = countEdits(a, b);
        expect(edits).toBe(countEdits(b, a));
        expect(edits === 0).toBe(a === b);
        expect(edits).toBeLessThanOrEqual(Math.max(a.length, b.length));
      }),
    );
  });
});

describe('findNearMiss', () => {
  const words = ['conjunction', 'first-crescent', 'full-moon'];

  it.each([
    ['conjuction', 'conjunction'],
    ['Full-Moon', 'full-moon'],
    ['full moon', 'full-moon'],
    ['first-cresent', 'first-crescent'],
    ['conj', 'conjunction'],
  ])('%s means %s', (found, meant) => {
    expect(findNearMiss(found, words)).toBe(meant);
  });

  it('finds nothing for a word that is far from all', () => {
    expect(findNearMiss('sunset', words)).toBeUndefined();
    expect(findNearMiss('', words)).toBeUndefined();
    expect(findNearMiss('x'.repeat(10_000), words)).toBeUndefined();
    expect(findNearMiss('conjunction', [])).toBeUndefined();
  });

  it('takes the beginning of a word only when it can be one word alone', () => {
    expect(findNearMiss('wed', ['tuesday', 'wednesday'])).toBe('wednesday');
    expect(findNearMiss('night', ['night-of-month', 'night-named'])).toBeUndefined();
    expect(findNearMiss('we', ['tuesday', 'wednesday'])).toBeUndefined();
  });

  it('overlooks accents, case and the way letters are encoded', () => {
    expect(findNearMiss('lune cachee', ['Lune cache\u0301e'])).toBe('Lune cache\u0301e');
  });

  it('takes the nearest, and the first of equally near ones', () => {
    expect(findNearMiss('rises', ['raises', 'rise', 'rises!'])).toBe('raises');
    expect(findNearMiss('opne', ['one', 'open'])).toBe('one');
  });

  it('does not turn one letter into another word of one letter', () => {
    expect(findNearMiss('Z', ['A', 'B'])).toBeUndefined();
  });
});
