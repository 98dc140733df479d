import { describe, expect, it } from 'vitest';
import { keepEvenLengths, standsOut } from '../../src/quiz/even-lengths.ts';

function show(text: string) {
  return { content: [{ type: 'text' as const, value: text }] };
}

function textOf(text: string) {
  return show(text).content;
}

/* Haladyna, Downing and Rodriguez (2002), from memory: keep the length of options about equal. */
describe('options by length', () => {
  it('stand out by half as much again, either way, beside all others', () => {
    expect(standsOut(textOf('sixteen letters.'), [show('ten letter'), show('nine lett')])).toBe(true);
    expect(standsOut(textOf('fifteen letters'), [show('ten letter'), show('nine lett')])).toBe(false);
    expect(standsOut(textOf('six le'), [show('ten letter'), show('sixteen letters.')])).toBe(true);
    expect(standsOut(textOf('six le'), [show('ten letter'), show('eight le')])).toBe(false);
  });

  it('keep the even sets, and all where none is even', () => {
    const even = [show('Half Shell'), show('Dry Seas')];
    const uneven = [show('Up'), show('Moon')];
    expect(keepEvenLengths(textOf('Other Half'), [uneven, even])).toEqual([even]);
    expect(keepEvenLengths(textOf('Other Half'), [uneven])).toEqual([uneven]);
  });
});
