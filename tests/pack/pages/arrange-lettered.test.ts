import type { ElementContent } from 'hast';
import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { arrangeLettered, nameArrangement } from '../../../src/pack/pages/arrange-lettered.ts';

const arrange = (...contents: readonly ElementContent[]) =>
  nameArrangement(
    arrangeLettered(contents.map((content, place) => ({ letter: 'ABCDEFGH'.charAt(place), content: [content] }))),
  );
const words = (length: number): ElementContent => ({ type: 'text', value: 'm'.repeat(length) });
const fill = (count: number, content: ElementContent) => Array.from({ length: count }, () => content);

describe('arrangeLettered', () => {
  it('puts short words in one row, and longer ones in two columns or one', () => {
    expect(arrange(...fill(4, words(12)))).toEqual(['by-4']);
    expect(arrange(words(2), words(2), words(13), words(2))).toEqual(['by-2']);
    expect(arrange(words(2), words(57))).toEqual(['by-1']);
  });

  it('leaves none alone in the last row where it can', () => {
    const columns = [2, 3, 4, 5, 6, 7, 8].map((count) => arrange(...fill(count, words(5))).join());
    expect(columns).toEqual(['by-2', 'by-3', 'by-4', 'by-3', 'by-3', 'by-4', 'by-4']);
  });

  it('puts pictures beside each other, whatever stands below them', () => {
    const picture = h('p', [h('svg'), 'm'.repeat(60)]);
    expect(arrange(words(3), picture, words(3))).toEqual(['by-3', 'pictures']);
  });

  it('is the same whichever of them comes first', () => {
    const contents = [words(1), words(30), words(8), h('img', { src: 'images/x.png', alt: '' })];
    expect(arrange(...contents)).toEqual(arrange(...contents.toReversed()));
  });
});
