import { describe, expect, it } from 'vitest';
import { findGestureWord } from '../../src/content/gesture-words.ts';

const SHAPES = ['open', 'fist', 'curved', 'pointing', 'spread', 'pinch'];
const PLACES = ['above-head', 'brow', 'face', 'chest', 'waist', 'side', 'low'];
const DIRECTIONS = ['up', 'down', 'in', 'out', 'front', 'back'];

describe('findGestureWord', () => {
  it.each([
    ['opne', SHAPES, 'open'],
    ['Flat', SHAPES, 'open'],
    ['point', SHAPES, 'pointing'],
    ['above head', PLACES, 'above-head'],
    ['out to the side', PLACES, 'side'],
    ['sky', PLACES, 'above-head'],
    ['sky', DIRECTIONS, 'up'],
    ['sideways', PLACES, 'side'],
    ['sideways', DIRECTIONS, 'out'],
    ['xylophone', SHAPES, undefined],
    ['constructor', SHAPES, undefined],
    ['flat', PLACES, undefined],
  ])('finds what is meant by `%s` among %s', (word, allowed, meant) => {
    expect(findGestureWord(word, allowed)).toBe(meant);
  });
});
