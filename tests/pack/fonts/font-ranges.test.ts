import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { describe, expect, it } from 'vitest';
import { FONT_RANGES, listCharactersOf, listFontRanges } from '../../../src/pack/fonts/font-ranges.ts';

describe('the ranges of the typeface', () => {
  it('are those that its package states for its files', () => {
    const path = createRequire(import.meta.url).resolve('@fontsource/andika/unicode.json');
    expect(FONT_RANGES).toEqual(JSON.parse(readFileSync(path, 'utf8')));
  });

  it.each([
    ['Round Moon', ['latin']],
    ['Te Rā, ʻokina and é', ['latin', 'latin-ext']],
    ['Ночь', ['cyrillic']],
    ['œuf', ['latin']],
    ['漢', []],
    ['', []],
  ] as const)('of “%s” are found', (text, ranges) => {
    expect(listFontRanges(text)).toEqual(ranges);
  });

  it('give the characters that each holds, once and in order', () => {
    expect(listCharactersOf('ōba ab ō', 'latin')).toBe(' ab');
    expect(listCharactersOf('ōba ab ō', 'latin-ext')).toBe('ō');
    // In the list of both.
    expect(listCharactersOf('œō', 'latin')).toBe('œ');
    expect(listCharactersOf('œō', 'latin-ext')).toBe('ō');
  });
});
