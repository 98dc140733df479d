import { describe, expect, it } from 'vitest';
import { nameHeadings } from '../../../src/pack/pdf/name-headings.ts';

const ENTRIES = (titles: readonly string[]) => titles.map((title, index) => ({ number: index + 10, title }));

describe('nameHeadings', () => {
  it.each([
    ['one that is said once', 'Steps', ['Steps'], 'Steps'],
    ['one of several texts', 'GroupHeron', ['Group ', 'Heron'], 'Group Heron'],
    ['one that sheets repeat', 'GroupGroupGroupHeronHeron', ['Group ', 'Heron'], 'Group Heron'],
    ['one with a text that is not shown', 'Round Moon', ['Round Moon', ' (hidden words)'], 'Round Moon'],
    ['one that is broken into lines', 'How weknow', ['How\n  we know'], 'How we know'],
    ['one with joined letters and marks for breaks', 'O\ufb03ce', ['Of\u00adfice'], 'Of\u00adfice'],
  ])('calls %s as the page does', (_name, title, texts, expected) => {
    expect(nameHeadings(ENTRIES([title]), [texts])).toEqual(new Map([[10, expected]]));
  });

  it('passes over headings that are not shown, and entries that fit none', () => {
    const titles = nameHeadings(ENTRIES(['One', 'Shouted', 'Two', '']), [['Hidden'], ['One'], ['shouted'], ['Two']]);
    expect(titles).toEqual(
      new Map([
        [10, 'One'],
        [12, 'Two'],
      ]),
    );
  });

  it('keeps headings of one name in their order', () => {
    const titles = nameHeadings(ENTRIES(['BringBring', 'Bring']), [['Bring'], ['Steps'], ['Bring']]);
    expect([...titles.values()]).toEqual(['Bring', 'Bring']);
  });
});
