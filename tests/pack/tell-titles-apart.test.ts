import { describe, expect, it } from 'vitest';
import { findTitle, tellTitlesApart } from '../../src/pack/tell-titles-apart.ts';

const page = (title: string, path = 'a.html') => ({ path, content: `<head><title>${title}</title></head><p>${title}` });
const listTitles = (titles: readonly string[], taken?: readonly string[]) =>
  tellTitlesApart(
    titles.map((title) => page(title)),
    taken,
  ).map(findTitle);

describe('tellTitlesApart', () => {
  it('leaves titles alone that no other page has', () => {
    const pages = [page('One'), page('Two')];
    expect(tellTitlesApart(pages)).toEqual(pages);
    expect(tellTitlesApart(pages)[0]).toBe(pages[0]);
  });

  it('numbers the second of a title, and each after it, past numbers that are there', () => {
    expect(listTitles(['A', 'A', 'A'])).toEqual(['A', 'A (2)', 'A (3)']);
    expect(listTitles(['A (2)', 'A', 'A'])).toEqual(['A (2)', 'A', 'A (3)']);
    expect(listTitles(['A'], ['A', 'A (2)'])).toEqual(['A (3)']);
  });

  it('changes the title alone, whatever marks it has', () => {
    const [, second] = tellTitlesApart([page('$&amp; $1'), page('$&amp; $1')]);
    expect(second?.content).toBe('<head><title>$&amp; $1 (2)</title></head><p>$&amp; $1');
  });

  it('passes over files without a title', () => {
    const files = [
      { path: 'a.png', content: Uint8Array.of(1) },
      { path: 'calendar.ics', content: 'BEGIN' },
    ];
    expect(tellTitlesApart(files)).toEqual(files);
  });
});
