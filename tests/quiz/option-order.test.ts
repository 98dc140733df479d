import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readText } from '../../src/quiz/fold-text.ts';
import { orderOptions } from '../../src/quiz/option-order.ts';
import { choice, deal, only, optionTexts, pairUp, text } from './quiz-helpers.ts';

const words = fc.uniqueArray(fc.string({ minLength: 1 }), { minLength: 2, maxLength: 8 });
const place = fc.record({
  seed: fc.string(),
  question: fc.nat({ max: 20 }),
  paper: fc.nat({ max: 30 }),
  shared: fc.boolean(),
});

describe('orderOptions', () => {
  it('keeps every option, in an order that does not hang on the order they are given in', () => {
    fc.assert(
      fc.property(words, place, fc.func(fc.nat()), (options, at, key) => {
        const turned = options.toSorted((one, other) => key(one) - key(other));
        const order = (given: readonly string[]) =>
          orderOptions(
            given.map((each) => ({ content: text(each) })),
            at,
          ).map(({ content }) => readText(content));
        expect(order(turned)).toEqual(order(options));
        expect(order(options).toSorted()).toEqual(options.toSorted());
      }),
    );
  });

  it('brings each shared option to each place once in a round of papers', () => {
    fc.assert(
      fc.property(words, fc.string(), fc.nat({ max: 3 }), (options, seed, round) => {
        const given = options.map((each) => ({ content: text(each) }));
        const orders = options.map((_, paper) =>
          orderOptions(given, { seed, question: 0, paper: round * options.length + paper, shared: true }),
        );
        for (const option of given) {
          expect(new Set(orders.map((order) => order.indexOf(option))).size).toBe(options.length);
        }
      }),
    );
  });
});

describe('the order of options on papers', () => {
  it('is the same whichever option is right, and however they are written', () => {
    const written = [
      ['+a', 'b', 'c', 'd'],
      ['a', 'b', '+c', 'd'],
      ['d', '+c', 'b', 'a'],
    ];
    const orders = written.map((options) =>
      deal({ sources: [choice('Q', options)] }).sheet.papers.map(({ questions }) => optionTexts(only(questions))),
    );
    expect(orders[1]).toEqual(orders[0]);
    expect(orders[2]).toEqual(orders[0]);
  });

  it('has the right option of a question at another place for each of as many groups as there are options', () => {
    const { sheet } = deal({ sources: [choice('Q', ['+a', 'b', 'c', 'd']), choice('R', ['a', 'b', 'c', '+d'])] });
    for (const number of [1, 2]) {
      const letters = pairUp(sheet).flatMap(({ answer }) => (answer.number === number ? answer.letters : []));
      expect(letters.toSorted()).toEqual(['A', 'B', 'C', 'D']);
    }
  });
});
