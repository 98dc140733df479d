import { create, type Font } from 'fontkit';
import { describe, expect, it } from 'vitest';
import { createFontCutter } from '../../src/node/cut-fonts.ts';
import type { FontNeed } from '../../src/pack/fonts/plan-fonts.ts';

const cutter = createFontCutter();

async function cut(need: Omit<FontNeed, 'path'>): Promise<Font> {
  const font = create(Buffer.from(await cutter.cut({ ...need, path: '' })));
  // A single face, and no collection of them.
  return font as Font;
}

describe('a font that was cut', () => {
  it('has a glyph for each character asked for, and no other letter', async () => {
    const font = await cut({ face: 'regular', range: 'latin', characters: 'Agiqʻ’' });
    for (const character of 'Agiqʻ’') expect(font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)).toBe(true);
    expect(font.hasGlyphForCodePoint(0x42)).toBe(false);
  });

  it('has the long vowels that many other fonts lack', async () => {
    const font = await cut({ face: 'bold', range: 'latin-ext', characters: 'āēīōūĀŌ' });
    for (const character of 'āēīōūĀŌ') expect(font.hasGlyphForCodePoint(character.codePointAt(0) ?? 0)).toBe(true);
  });

  it('keeps its name and weight, and the licence in it', async () => {
    const font = await cut({ face: 'bold', range: 'latin', characters: 'a' });
    expect(font.familyName).toContain('Andika');
    expect(font['OS/2'].usWeightClass).toBe(700);
    expect(cutter.licence).toContain('SIL OPEN FONT LICENSE Version 1.1');
  });

  it('is the same bytes for the same characters', async () => {
    const need = { path: '', face: 'italic', range: 'latin', characters: 'abc' } as const;
    expect(await createFontCutter().cut(need)).toEqual(await createFontCutter().cut(need));
  });

  it('is small: a school’s letters take less than 12 kB', async () => {
    const characters = Array.from({ length: 95 }, (_, at) => String.fromCodePoint(32 + at)).join('');
    expect((await cutter.cut({ path: '', face: 'regular', range: 'latin', characters })).length).toBeLessThan(12_000);
  });
});
