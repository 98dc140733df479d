import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  decodeEscapes,
  decodePercents,
  decodeReferences,
  findBase64,
  mayBeCoded,
} from '../../../src/pack/leaks/decode-text.ts';

describe('a coding is undone', () => {
  it.each([
    ['&#82;&#x6f;&#X75;nd', 'Round'],
    ['R&ouml;und&nbsp;M&oacuteon', 'Round Moon'],
    ['Ro&shy;und&ZeroWidthSpace;', 'Round'],
    ['&lt;b&gt; &amp;amp;', '<b> &amp;'],
    ['a &unknown; b & c, R&D', 'a   b & c, R&D'],
    ['&#0;&#xffffff;', '  '],
  ])('of references: %s', (text, decoded) => {
    expect(decodeReferences(text)).toBe(decoded);
  });

  it.each([
    ['\\u0052o\\x75\\u{6e}d', 'Round'],
    ['\\52 o\\75nd', 'Round'],
    ['a\\nb\\\\c\\"d', 'a b\\c"d'],
  ])('of escapes: %s', (text, decoded) => {
    expect(decodeEscapes(text)).toBe(decoded);
  });

  it('of percents, and of base64 in each alphabet', () => {
    expect(decodePercents('Round%20M%C4%81ra, 50 %')).toBe('Round Māra, 50 %');
    expect(decodePercents('50 % and more')).toBeUndefined();
    const decode = (text: string) => findBase64(text).map((bytes) => new TextDecoder().decode(bytes));
    expect(decode('x: Um91bmQgTW9vbiBpcyBuZXh0.')).toEqual(['Round Moon is next']);
    expect(decode('Pz8-Pz8_Um91bmQ')).toEqual(['??>???Round']);
    expect(decode('a-quite-ordinary-class')).toEqual([]);
  });

  it('of any text in base64 or percents that a page may hold', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', minLength: 12, maxLength: 60 }), (text) => {
        const bytes = new TextEncoder().encode(text);
        const coded = btoa(String.fromCharCode(...bytes));
        if (/[a-z0-9][A-Z]/.test(coded)) expect(findBase64(` ${coded} `)).toEqual([bytes]);
        expect(decodePercents(`${encodeURIComponent(text)}%20`)).toBe(`${text} `);
        expect(mayBeCoded(`${encodeURIComponent(text)}%20`)).toBe(true);
      }),
    );
  });
});
