import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { splitWords } from '../../../src/pack/leaks/split-words.ts';

describe('words of a text', () => {
  it.each([
    ['Round Moon', ['round', 'moon']],
    ['  «Round—Moon», 3!', ['round', 'moon', '3']],
    ['round-moon_2.png', ['round', 'moon', '2', 'png']],
    ['Māra, mārā', ['mara', 'mara']],
    ['Ro\u00adund\u200b Mo\u2060on', ['round', 'moon']],
    ['ＲＯＵＮＤ ﬁsh', ['round', 'fish']],
    ['Straße, Œuvre, Łódź', ['straße', 'œuvre', 'łodz']],
    ['Πανσέληνος νύχτα', ['πανσεληνος', 'νυχτα']],
    ['満月の夜', ['満', '月', 'の', '夜']],
    ['पूर्णिमा रात', ['पूर्णिमा', 'रात']],
    ['', []],
    ['… — !', []],
  ])('%s', (text, words) => {
    expect(splitWords(text)).toEqual(words);
  });

  it('are the same in each way of encoding, and in capitals', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme' }), (text) => {
        const words = splitWords(text);
        for (const form of ['NFC', 'NFD', 'NFKC', 'NFKD'] as const)
          expect(splitWords(text.normalize(form))).toEqual(words);
        expect(splitWords(words.join(' '))).toEqual(words);
      }),
    );
    expect(splitWords('MĀRA ÉTÉ')).toEqual(splitWords('māra été'));
  });
});
