import { describe, expect, it } from 'vitest';
import { findDirection, runsRightToLeft } from '../../src/content/text-direction.ts';

// Scripts of the Unicode Standard whose letters have the bidirectional class R or AL (from memory), each by its letters.
const RIGHT_TO_LEFT = [
  'Hebrew',
  'Arabic',
  'Syriac',
  'Thaana',
  'Nko',
  'Samaritan',
  'Mandaic',
  'Hanifi_Rohingya',
  'Adlam',
];
const LEFT_TO_RIGHT = [
  'Latin',
  'Greek',
  'Cyrillic',
  'Devanagari',
  'Thai',
  'Ethiopic',
  'Cherokee',
  'Han',
  'Vai',
  'Osage',
];

function listLetters(script: string): string[] {
  const letter = new RegExp(`^(?=\\p{Letter})\\p{Script=${script}}$`, 'u');
  const letters: string[] = [];
  for (let code = 0; code <= 0x1ffff; code += 1) {
    const text = String.fromCodePoint(code);
    if (letter.test(text)) letters.push(text);
  }
  return letters;
}

describe('runsRightToLeft', () => {
  it.each(RIGHT_TO_LEFT)('knows every letter of %s', (script) => {
    const letters = listLetters(script);
    expect(letters.length).toBeGreaterThan(20);
    expect(letters.filter((letter) => !runsRightToLeft(letter))).toEqual([]);
  });

  it.each(LEFT_TO_RIGHT)('takes no letter of %s for one of those', (script) => {
    const letters = listLetters(script);
    expect(letters.length).toBeGreaterThan(20);
    expect(letters.filter(runsRightToLeft)).toEqual([]);
  });

  it('leaves numbers and signs out', () => {
    expect(runsRightToLeft('12:30 · {n} – ’ʻ')).toBe(false);
  });
});

describe('findDirection', () => {
  it('goes by most of the texts', () => {
    expect(findDirection(['אב', 'גד', 'am'])).toBe('rtl');
    expect(findDirection(['אב', 'one', 'two'])).toBe('ltr');
    expect(findDirection([])).toBe('ltr');
  });
});
