import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { estimateWidthEms, findLineBreaks, fitLabel, fitOrCutLabel, measureText } from '../../src/drawing/fit-label.ts';

describe('estimateWidthEms', () => {
  it('gives marks no width and wide scripts a full em', () => {
    expect(estimateWidthEms('e\u0301', false)).toBe(estimateWidthEms('e', false));
    expect(estimateWidthEms('月', false)).toBeGreaterThanOrEqual(1);
    expect(estimateWidthEms('', true)).toBe(0);
  });

  it.each([
    // Widths in ems measured in a browser, letter by letter, in Andika and in DejaVu Sans, the wider of the two.
    ['Hidden Moon', false, 0.75 + 0.28 + 0.63 + 0.63 + 0.62 + 0.63 + 0.32 + 0.88 + 0.61 + 0.61 + 0.63],
    ['Reed', true, 0.77 + 0.68 + 0.68 + 0.72],
    ['1 Jul', false, 0.64 + 0.32 + 0.47 + 0.63 + 0.28],
  ])('is on the safe side for %s', (text, bold, measured) => {
    expect(estimateWidthEms(text, bold)).toBeGreaterThanOrEqual(measured * 0.97);
    expect(estimateWidthEms(text, bold)).toBeLessThan(measured * 1.25);
  });
});

describe('findLineBreaks', () => {
  it('breaks at spaces and after hyphens', () => {
    expect(findLineBreaks(measureText('High-water mark', false), 4, 3)).toEqual(['High-', 'water', 'mark']);
    expect(findLineBreaks(measureText('High-water mark', false), 40, 3)).toEqual(['High-water mark']);
  });

  it('breaks between ideographs and kana, but not before small kana and marks', () => {
    expect(findLineBreaks(measureText('三日月の夜', false), 3.3, 2)).toEqual(['三日月', 'の夜']);
    expect(measureText('しょうがつ、はる', false).words.map(({ text }) => text)).toEqual([
      'しょ',
      'う',
      'が',
      'つ、',
      'は',
      'る',
    ]);
    expect(measureText('Night 月夜 two', false).words.map(({ text }) => text)).toEqual(['Night ', '月', '夜 ', 'two']);
  });

  it('finds nothing when a word is too wide or the lines are too many', () => {
    expect(findLineBreaks(measureText('Extraordinary', false), 4, 3)).toBeUndefined();
    expect(findLineBreaks(measureText('one two three', false), 3, 2)).toBeUndefined();
  });
});

describe('fitLabel', () => {
  it('keeps the size where it fits, and evens out the lines', () => {
    expect(fitLabel('Round Moon', 50, 5, 2, false)).toEqual({ lines: ['Round Moon'], fontSize: 5 });
    const even = fitLabel('Nuit de la grande marée', 50, 5, 2, false);
    expect(even.lines).toEqual(['Nuit de la', 'grande marée']);
  });

  it('keeps all letters in order and within the width, whatever the text', () => {
    const texts = fc.oneof(fc.string(), fc.lorem({ maxCount: 12 }), fc.string({ unit: 'grapheme', maxLength: 80 }));
    fc.assert(
      fc.property(
        texts,
        fc.double({ min: 2, max: 80, noNaN: true }),
        fc.integer({ min: 1, max: 3 }),
        (text, width, most) => {
          const label = fitLabel(text, width, 6, most, true);
          expect(label.lines.length).toBeGreaterThanOrEqual(1);
          expect(label.lines.length).toBeLessThanOrEqual(most);
          expect(label.lines.join('').replace(/\s/gu, '')).toBe(text.replace(/\s/gu, ''));
          expect(label.fontSize).toBeGreaterThan(0);
          expect(label.fontSize).toBeLessThanOrEqual(6);
          for (const line of label.lines) {
            expect(estimateWidthEms(line, true) * label.fontSize).toBeLessThanOrEqual(width + 1e-9);
          }
        },
      ),
    );
  });

  it('breaks one long word between letters, and never parts a mark from its letter', () => {
    const { lines } = fitLabel('e\u0301'.repeat(60), 20, 6, 2, false);
    expect(lines).toEqual(['e\u0301'.repeat(30), 'e\u0301'.repeat(30)]);
  });
});

describe('fitOrCutLabel', () => {
  it('leaves alone what fits at three fifths of the size or more', () => {
    for (const text of ['Round Moon', 'Night of the seventeen herons', 'Schwarzbrotmondnacht']) {
      expect(fitOrCutLabel(text, 40, 5, 2, true)).toEqual({ ...fitLabel(text, 40, 5, 2, true), cut: false });
    }
  });

  it('cuts what does not, with an ellipsis, as late as it can', () => {
    const letters = fc.stringMatching(/^[a-zéM月]{1,40}( [a-z]{1,20}){0,20}$/u);
    fc.assert(
      fc.property(letters, fc.integer({ min: 1, max: 2 }), fc.integer({ min: 8, max: 60 }), (text, maxLines, width) => {
        const { lines, fontSize, cut } = fitOrCutLabel(text, width, 5, maxLines, true);
        expect(lines.length).toBeLessThanOrEqual(maxLines);
        for (const line of lines) expect(estimateWidthEms(line, true) * fontSize).toBeLessThanOrEqual(width + 1e-9);
        expect(fontSize).toBeGreaterThan(2.99);
        if (!cut) return;
        expect(lines.at(-1)?.endsWith('…')).toBe(true);
        expect(fitLabel(text, width, 5, maxLines, true).fontSize).toBeLessThan(3);
      }),
    );
  });

  it('does not part a letter from its mark', () => {
    const { lines } = fitOrCutLabel('e\u0301'.repeat(60), 20, 5, 1, true);
    expect(lines.join('')).toMatch(/^(?:e\u0301)+…$/u);
  });
});
