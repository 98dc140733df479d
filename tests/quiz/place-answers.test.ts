import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrawnAnswer, DrawnQuestion } from '../../src/quiz/draw-question.ts';
import { type Placing, placeAnswers } from '../../src/quiz/place-answers.ts';
import { countUp, expectUniform } from './expect-uniform.ts';
import { text } from './quiz-helpers.ts';

function question(answer: DrawnAnswer, working = 'Because.'): DrawnQuestion {
  return { prompt: text('Q'), marks: 1, working: text(working), answer };
}

const LETTERS = ['a', 'b', 'c', 'd', 'e', 'f', 'g', 'h'];

/** A choice with one right option or more, all in the order right, wrong. */
function choice(options: number, right = 1, working?: string): DrawnQuestion {
  const contents = LETTERS.slice(0, options).map(text);
  const wrong = contents.slice(right).map((content) => ({ content, means: [] }));
  return question({ kind: 'options', right: contents.slice(0, right), wrong }, working);
}

const order = (items: number) => question({ kind: 'order', items: LETTERS.slice(0, items).map(text) });
const match = (items: number) =>
  question({
    kind: 'match',
    headings: undefined,
    pairs: LETTERS.slice(0, items).map((letter) => ({ left: text(letter.toUpperCase()), right: text(letter) })),
  });

const placeOfRight = (placing: Placing | undefined) => placing?.indexOf(0) ?? -1;

describe('placeAnswers', () => {
  it('balances right places on every paper: counts differ by one at most among questions with as many options', () => {
    const counts = fc.array(fc.integer({ min: 2, max: 6 }), { minLength: 1, maxLength: 14 });
    fc.assert(
      fc.property(counts, fc.string(), (options, seed) => {
        const placings = placeAnswers(
          options.map((count) => choice(count)),
          seed,
        );
        for (const count of new Set(options)) {
          const places = placings.filter((_, at) => options[at] === count).map(placeOfRight);
          const times = Array.from({ length: count }, (_, place) => places.filter((each) => each === place).length);
          expect(Math.max(...times) - Math.min(...times)).toBeLessThanOrEqual(1);
        }
      }),
    );
  });

  it('puts right options at each place equally often over 5,000 papers, whichever question it is', () => {
    const drawn = Array.from({ length: 5 }, () => choice(4));
    const counts = drawn.map(() => [0, 0, 0, 0]);
    let before: readonly Placing[] = [];
    for (let paper = 0; paper < 5000; paper++) {
      before = placeAnswers(drawn, `term\npaper ${paper}`, before);
      for (const [at, placing] of before.entries()) {
        const row = counts[at] ?? [];
        row[placeOfRight(placing)] = (row[placeOfRight(placing)] ?? 0) + 1;
      }
    }
    for (const row of counts) expectUniform(row);
  });

  it('shuffles several right options evenly: all 24 orders', () => {
    const counts = new Map<string, number>();
    for (let paper = 0; paper < 4800; paper++) {
      countUp(counts, String(placeAnswers([choice(4, 2)], `paper ${paper}`)[0]));
    }
    expect(counts.size).toBe(24);
    expectUniform(counts.values());
  });

  it.each([
    ['an order', order],
    ['a match', match],
  ])('never shows %s solved, and every other arrangement equally often', (_name, make) => {
    const counts = new Map<string, number>();
    for (let paper = 0; paper < 4600; paper++) {
      countUp(counts, String(placeAnswers([make(4)], `paper ${paper}`)[0]));
    }
    expect(counts.has('0,1,2,3')).toBe(false);
    expect(counts.size).toBe(23);
    expectUniform(counts.values());
  });

  it('puts a shared question’s right option elsewhere on the next paper', () => {
    const drawn = [choice(4), choice(4), choice(3), choice(2)];
    let before: readonly Placing[] = [];
    for (let paper = 0; paper < 300; paper++) {
      const now = placeAnswers(drawn, `paper ${paper}`, before);
      expect(now.filter((placing, at) => placeOfRight(placing) === placeOfRight(before[at]))).toEqual([]);
      before = now;
    }
  });

  it('hangs on the key’s own words, so that seed and program do not tell the places', () => {
    const placesWith = (working: string) =>
      Array.from({ length: 40 }, (_, paper) => {
        return placeAnswers([choice(4, 1, working), choice(4, 1, working)], `paper ${paper}`).map(placeOfRight);
      });
    expect(placesWith('Because of the Sun.')).toEqual(placesWith('Because of the Sun.'));
    const differences = placesWith('Because of the Sun.').filter(
      (places, paper) => String(places) !== String(placesWith('Because of the Moon.')[paper]),
    );
    expect(differences.length).toBeGreaterThan(20);
  });

  it('does not hang on the order in which wrong options were written', () => {
    const contents = ['x', 'y', 'z'].map((word) => ({ content: text(word), means: [] }));
    const shown = (wrong: typeof contents) => {
      const drawn = question({ kind: 'options', right: [text('r')], wrong });
      // The key's words are the same for both but for their order, so the seed differs: compare the sets of orders.
      const orders = Array.from({ length: 400 }, (_, paper) => {
        const [placing = []] = placeAnswers([drawn], `paper ${paper}`);
        return placing
          .map((number) => JSON.stringify([text('r'), ...wrong.map(({ content }) => content)][number]))
          .join();
      });
      return new Set(orders);
    };
    expect(shown(contents)).toEqual(shown(contents.toReversed()));
  });

  it('has nothing to place for a line, lines or a drawing', () => {
    const forgive = { case: true, accents: true };
    const drawn = [
      question({ kind: 'line', forgive, accepted: [text('a')], slips: [] }),
      question({ kind: 'lines', lines: 3, rubric: [{ marks: 1, words: 'a' }] }),
      question({ kind: 'disc', renderDrawing: () => [], description: 'a' }),
    ];
    expect(placeAnswers(drawn, 'seed')).toEqual([[], [], []]);
  });

  it('can place two things: they change places', () => {
    expect(placeAnswers([order(2), match(2)], 'seed')).toEqual([
      [1, 0],
      [1, 0],
    ]);
  });
});
