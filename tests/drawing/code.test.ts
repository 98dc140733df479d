import jsQR from 'jsqr';
import { describe, expect, it } from 'vitest';
import { LONGEST_LINK_BYTES } from '../../src/content/check-link.ts';
import { renderCode } from '../../src/drawing/code.ts';
import { attribute, listElements } from './find-elements.ts';

/** The code as printed: which of its square's modules are black, read back from the picture. */
const readModules = (link: string) => {
  const code = renderCode(link);
  const [corner, , whole] = attribute(code, 'viewBox').split(' ').map(Number);
  if (corner === undefined || whole === undefined) throw new Error('the code has no box');
  const black = Array.from({ length: whole }, () => Array<boolean>(whole).fill(false));
  const path = listElements(code).find(({ tagName }) => tagName === 'path');
  for (const [, x, y, width] of attribute(path ?? code, 'd').matchAll(/M(\d+) (\d+)h(\d+)v1h-\3z/g)) {
    for (let at = 0; at < Number(width); at += 1) {
      const row = black[Number(y) - corner];
      if (row !== undefined) row[Number(x) - corner + at] = true;
    }
  }
  return { code, black, quiet: -corner, whole };
};

/** Read by an independent decoder (jsQR), from a picture of a few pixels a module. */
const decode = (link: string): string | undefined => {
  const { black, whole } = readModules(link);
  const scale = 5;
  const side = whole * scale;
  const pixels = new Uint8ClampedArray(4 * side * side);
  for (let y = 0; y < side; y += 1) {
    for (let x = 0; x < side; x += 1) {
      const dark = black[Math.floor(y / scale)]?.[Math.floor(x / scale)] === true;
      pixels.set(dark ? [0, 0, 0, 255] : [255, 255, 255, 255], 4 * (y * side + x));
    }
  }
  return jsQR(pixels, side, side, { inversionAttempts: 'dontInvert' })?.data;
};

const LINKS = [
  'https://recordings.example/1',
  'https://recordings.example/estuary/round-moon?voice=children&slow=yes#start',
  'https://recordings.example/%E6%9C%88/nuit%20noire',
  'https://recordings.example/nuit-de-la-lumière/月の夜',
  `https://recordings.example/${'a'.repeat(LONGEST_LINK_BYTES - 27)}`,
];

describe('renderCode', () => {
  it.each(LINKS)('is read as %s by an independent reader', (link) => {
    expect(decode(link)).toBe(link);
  });

  it.each(LINKS)('leaves four white modules around, and is 25 mm wide within them, for %s', (link) => {
    const { code, black, quiet, whole } = readModules(link);
    expect(quiet).toBe(4);
    const isBlack = (x: number, y: number) => black[y]?.[x] === true;
    const edge = Array.from({ length: whole }, (_, at) => at);
    for (const at of edge) {
      for (const depth of [0, 1, 2, 3, whole - 4, whole - 3, whole - 2, whole - 1]) {
        expect(isBlack(at, depth) || isBlack(depth, at)).toBe(false);
      }
    }
    const side = attribute(code, 'width');
    expect(side).toMatch(/^[\d.]+mm$/);
    expect(attribute(code, 'height')).toBe(side);
    const modules = whole - 2 * quiet;
    expect((Number.parseFloat(side) * modules) / whole).toBeGreaterThan(24.9);
    expect(Number.parseFloat(side) / whole).toBeGreaterThan(0.43);
  });

  it.each(LINKS)('corrects errors at level M or better, for %s', (link) => {
    const { black, quiet } = readModules(link);
    // Bits 14 and 13 of the format information, in row 8, under its mask 101010000010010: ISO/IEC 18004, from memory.
    const level = [black[quiet + 8]?.[quiet] !== true, black[quiet + 8]?.[quiet + 1] === true].map(Number).join('');
    expect(['00', '11', '10']).toContain(level);
  });

  it('is black on white whatever the page, and silent for screen readers', () => {
    const { code } = readModules('https://recordings.example/1');
    expect(code.properties).toMatchObject({ ariaHidden: 'true' });
    expect(listElements(code).map(({ tagName, properties }) => [tagName, properties['fill']])).toEqual(
      expect.arrayContaining([
        ['rect', '#fff'],
        ['path', '#000'],
      ]),
    );
  });

  it('refuses what no code can hold', () => {
    expect(() => renderCode(`https://recordings.example/${'a'.repeat(3000)}`)).toThrow(RangeError);
  });
});
