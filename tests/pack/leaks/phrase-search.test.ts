import fc from 'fast-check';
import { expect, it } from 'vitest';
import { countPhrase, findPhrase } from '../../../src/pack/leaks/find-phrase.ts';
import { createPhraseSearch } from '../../../src/pack/leaks/phrase-search.ts';

const words = (maxLength: number) => fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength });

it('finds each phrase wherever it stands, and nothing else', () => {
  fc.assert(
    fc.property(fc.array(words(5), { maxLength: 8 }), words(40), (phrases, text) => {
      const found: string[] = [];
      createPhraseSearch(phrases).find(text, (phrase, at) => found.push(`${phrase} ${at}`));
      const wanted = phrases.flatMap((phrase, index) =>
        phrase.length === 0
          ? []
          : text.flatMap((_, at) =>
              phrase.every((word, offset) => text[at + offset] === word) ? [`${index} ${at}`] : [],
            ),
      );
      expect(found.sort()).toEqual(wanted.sort());
      phrases.forEach((phrase, index) => {
        expect(countPhrase(text, phrase)).toBe(wanted.filter((each) => each.startsWith(`${index} `)).length);
      });
    }),
  );
});

it('keeps to a part of a text', () => {
  expect([...findPhrase(['a', 'b', 'a', 'b', 'a', 'b'], ['a', 'b'], 1, 5)]).toEqual([2]);
});
