import { describe, expect, it } from 'vitest';
import { fillParts, fillTemplate, findPlaceholders } from '../../src/content/template.ts';

describe('templates', () => {
  it('lists placeholders once, in order, and leaves other braces alone', () => {
    expect(findPlaceholders('{b} {a-1} {b} {} {A} { c } {é}')).toEqual(['b', 'a-1']);
  });

  it('fills placeholders with parts', () => {
    const name = { lang: 'fr' };
    expect(fillParts('Tonight is {night}, in {month}.', { night: name, month: 'M' })).toEqual([
      'Tonight is ',
      name,
      ', in ',
      'M',
      '.',
    ]);
    expect(fillParts('', {})).toEqual([]);
    expect(fillParts('{a}{a}', { a: 1 })).toEqual([1, 1]);
  });

  it('does not read placeholders or patterns in what it puts in', () => {
    expect(fillTemplate('{a} {b}', { a: '{b}', b: '$&' })).toBe('{b} $&');
  });

  it('throws for a value that is not there, also for names every object has', () => {
    expect(() => fillTemplate('{night}', {})).toThrow('No value for the placeholder {night}');
    expect(() => fillTemplate('{constructor}', {})).toThrow('No value');
  });
});
