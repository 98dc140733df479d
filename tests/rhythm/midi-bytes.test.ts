import { describe, expect, it } from 'vitest';
import { variableLength, wholeNumber } from '../../src/rhythm/midi-bytes.ts';

describe('variableLength', () => {
  // The examples of "Standard MIDI Files 1.0", section on variable-length quantities; from memory.
  it.each([
    [0x00, [0x00]],
    [0x40, [0x40]],
    [0x7f, [0x7f]],
    [0x80, [0x81, 0x00]],
    [0x2000, [0xc0, 0x00]],
    [0x3fff, [0xff, 0x7f]],
    [0x4000, [0x81, 0x80, 0x00]],
    [0x1fffff, [0xff, 0xff, 0x7f]],
    [0x200000, [0x81, 0x80, 0x80, 0x00]],
    [0x0fffffff, [0xff, 0xff, 0xff, 0x7f]],
  ])('writes %d', (value, bytes) => {
    expect(variableLength(value)).toEqual(bytes);
  });
});

describe('wholeNumber', () => {
  it('writes the most significant byte first', () => {
    expect(wholeNumber(0x0cb735, 3)).toEqual([0x0c, 0xb7, 0x35]);
    expect(wholeNumber(0xfedcba98, 4)).toEqual([0xfe, 0xdc, 0xba, 0x98]);
    expect(wholeNumber(6, 4)).toEqual([0, 0, 0, 6]);
  });
});
