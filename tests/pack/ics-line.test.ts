import { describe, expect, it } from 'vitest';
import { escapeIcsText, foldIcsLine } from '../../src/pack/ics-line.ts';

const countOctets = (line: string) => Buffer.byteLength(line, 'utf8');
const unfold = (folded: string) => folded.replaceAll('\r\n ', '');

describe('foldIcsLine', () => {
  it('leaves a line of 75 octets as it is and folds one of 76', () => {
    expect(foldIcsLine('x'.repeat(75))).toBe('x'.repeat(75));
    expect(foldIcsLine('x'.repeat(76))).toBe(`${'x'.repeat(75)}\r\n x`);
    // The space at the beginning of a folded line counts.
    expect(foldIcsLine('x'.repeat(150))).toBe(`${'x'.repeat(75)}\r\n ${'x'.repeat(74)}\r\n x`);
    expect(foldIcsLine('')).toBe('');
  });

  it.each(['é', '夜', '🌒', 'e\u0301', '\u{1F469}\u200D\u{1F680}'])('never cuts %s', (letter) => {
    for (let before = 60; before < 80; before += 1) {
      const line = `${'x'.repeat(before)}${letter.repeat(60)}`;
      const lines = foldIcsLine(line).split('\r\n');
      expect(unfold(foldIcsLine(line))).toBe(line);
      for (const [index, folded] of lines.entries()) {
        expect(countOctets(folded)).toBeLessThanOrEqual(75);
        expect(folded).not.toContain('\uFFFD');
        expect(folded).not.toMatch(/\p{Cs}/u);
        // Marks stay on their letter.
        if (index > 0) expect(folded).toMatch(/^ [^\p{M}\u200D]/u);
      }
    }
  });

  it('folds even where marks pile up without end', () => {
    const line = `a${'\u0301'.repeat(200)}`;
    expect(unfold(foldIcsLine(line))).toBe(line);
    expect(Math.max(...foldIcsLine(line).split('\r\n').map(countOctets))).toBeLessThanOrEqual(75);
  });
});

describe('escapeIcsText', () => {
  it.each([
    ['a\\b; c, d: e', 'a\\\\b\\; c\\, d: e'],
    ['one\r\ntwo\nthree', 'one\\ntwo\\nthree'],
    ['a\u0007b\tc', 'ab\tc'],
    ['"quoted"', '"quoted"'],
  ])('%j', (text, escaped) => {
    expect(escapeIcsText(text)).toBe(escaped);
  });
});
