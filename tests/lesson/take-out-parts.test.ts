import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { PART_ID, type PartText, takeOutParts } from '../../src/lesson/take-out-parts.ts';

const LONG = `<g class="a"><path d="${'M0 0h1'.repeat(20)}"/></g>`;
const OTHER = `<path class="b" d="${'M9 9v9'.repeat(20)}"/>`;

const partsOf = (texts: readonly string[]): PartText[] => texts.map((value) => ({ type: 'raw', value }));

const take = (texts: readonly string[]) => {
  const parts = partsOf(texts);
  return { stored: takeOutParts(parts), shown: parts.map(({ value }) => value) };
};

/** The texts again, each use with what it uses in its place. */
const putBack = ({ stored, shown }: ReturnType<typeof take>): string[] =>
  shown.map((text) => {
    const id = /^<use href="#([^"]+)"\/>$/.exec(text)?.[1];
    if (id === undefined) return text;
    expect(id).toMatch(PART_ID);
    const [, part] = new RegExp(`(<\\w+ id="${id}".*?)(?=<\\w+ id="drawn-|$)`).exec(stored) ?? [];
    return part?.replace(` id="${id}"`, '') ?? '';
  });

describe('takeOutParts', () => {
  it('stores once what stands more than once, and uses it from there', () => {
    expect(take([LONG, OTHER, LONG])).toEqual({
      stored: LONG.replace('<g ', '<g id="drawn-1" '),
      shown: ['<use href="#drawn-1"/>', OTHER, '<use href="#drawn-1"/>'],
    });
  });

  it('names parts in the order in which they are met first, without gaps', () => {
    const { shown } = take(['<path d="M0 0h1"/>', LONG, OTHER, OTHER, LONG, '<path d="M0 0h1"/>']);
    expect(shown).toEqual([
      '<path d="M0 0h1"/>',
      '<use href="#drawn-1"/>',
      '<use href="#drawn-2"/>',
      '<use href="#drawn-2"/>',
      '<use href="#drawn-1"/>',
      '<path d="M0 0h1"/>',
    ]);
  });

  it('leaves a page as it is that shows nothing twice', () => {
    expect(take([LONG, OTHER])).toEqual({ stored: '', shown: [LONG, OTHER] });
    expect(take([])).toEqual({ stored: '', shown: [] });
  });

  it('shows what was there, and never in more letters', () => {
    const anyText = fc
      .integer({ min: 0, max: 60 })
      .chain((length) => fc.constantFrom('M', 'L').map((letter) => `<path d="${letter.repeat(length)}"/>`));
    fc.assert(
      fc.property(fc.array(anyText, { maxLength: 40 }), (texts) => {
        const taken = take(texts);
        expect(putBack(taken)).toEqual(texts);
        expect(taken.stored.length + taken.shown.join('').length).toBeLessThanOrEqual(texts.join('').length);
      }),
    );
  });
});
