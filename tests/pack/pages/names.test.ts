import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { createLabels } from '../../../src/content/labels.ts';
import { renderName } from '../../../src/content/render-name.ts';
import { linkNames } from '../../../src/pack/pages/link-names.ts';
import { createNameBook } from '../../../src/pack/pages/name-book.ts';
import { sayNames } from '../../../src/pack/pages/say-names.ts';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, readText } from '../render-pages.ts';

const week = buildFakeWeek({
  calendar: {
    groups: [
      {
        name: 'Dark',
        say: 'dahk',
        meaning: 'No light.',
        nights: [{ name: 'Hidden', say: 'HID-un', gesture: 'wave' }, { name: 'Bare' }],
      },
      {
        name: 'Long',
        nights: Array.from({ length: 28 }, (_, index) => ({ name: `Night ${index + 3}`, meaning: 'So.' })),
      },
    ],
    months: [
      { name: 'Frost', say: 'frosst' },
      { name: 'Hidden', say: 'another' },
    ],
  },
});
const book = createNameBook(week);
const name = (text: string) => renderName(text, 'fr');

describe('createNameBook', () => {
  it('holds what there is to tell of nights, groups and months, in the calendar’s order', () => {
    expect([...book.keys()].slice(0, 3)).toEqual(['Dark', 'Hidden', 'Night 3']);
    expect(book.get('Dark')).toEqual({
      kind: 'group',
      id: 'name-group-1',
      groupNumber: 1,
      name: 'Dark',
      say: 'dahk',
      meaning: 'No light.',
    });
    expect(book.get('Hidden')).toMatchObject({ kind: 'night', id: 'name-night-1', nightNumber: 1 });
    expect(book.get('Frost')).toMatchObject({ kind: 'month', id: 'name-month-1' });
  });

  it('leaves out names of which nothing is told', () => {
    expect(book.has('Bare')).toBe(false);
    expect(book.has('Long')).toBe(false);
  });
});

describe('linkNames', () => {
  const link = (...nodes: Parameters<typeof linkNames>[0]) => {
    const met = new Set<string>();
    const children = linkNames(nodes, book, met);
    const links = findAll({ type: 'root', children: [...children] }, 'a');
    return { met: [...met], hrefs: links.map(({ properties }) => properties['href']), children };
  };

  it('leads from a name to its entry', () => {
    const { met, hrefs } = link(h('p', ['Tonight is ', name('Hidden'), ' of ', name('Dark')]));
    expect(met).toEqual(['Hidden', 'Dark']);
    expect(hrefs).toEqual(['#name-night-1', '#name-group-1']);
  });

  it('leaves words of the author, sentences and unknown names as they are', () => {
    const nodes = [h('p', 'Hidden'), h('p', [name('Tonight is Hidden.')]), h('p', [name('Bare')])];
    const { met, hrefs, children } = link(...nodes);
    expect(met).toEqual([]);
    expect(hrefs).toEqual([]);
    expect(children).toEqual(nodes);
  });

  it('takes up names in links and on cards, without a link of its own', () => {
    const { met, hrefs } = link(
      h('a', { href: 'x.html' }, [name('Hidden')]),
      h('ol', [h('li.gesture-card', [h('p', [name('Dark')])])]),
    );
    expect(met).toEqual(['Hidden', 'Dark']);
    expect(hrefs).toEqual(['x.html']);
  });

  it('does not change what it was given', () => {
    const given = h('p', [name('Hidden')]);
    link(given);
    expect(given).toEqual(h('p', [name('Hidden')]));
  });
});

describe('sayNames', () => {
  const view = { labels: createLabels('en'), namesLanguage: 'fr' };
  const say = (...nodes: Parameters<typeof sayNames>[0]) =>
    readText({ type: 'root', children: sayNames(nodes, book, view, {}) });

  it('puts behind a name how it is said, the first time it comes', () => {
    expect(say(h('p', [name('Hidden'), ', then ', name('Dark')]), h('p', [name('Hidden')]))).toBe(
      'Hidden (say: HID-un), then Dark (say: dahk)Hidden',
    );
  });

  it('says nothing of a name that a card on the sheet tells of, wherever the card stands', () => {
    const card = h('div.gesture-run', [h('li.gesture-card', [name('Hidden')])]);
    expect(say(h('p', [name('Hidden')]), card)).toBe('HiddenHidden');
    expect(say(h('section.tonight', [name('Dark')]), h('p', [name('Dark')]))).toBe('DarkDark');
  });

  it('tells of no name that is not there, and nothing of one that nobody says how to say', () => {
    expect(say(h('p', 'Hidden'), h('p', [name('Night 3'), name('Bare')]))).toBe('HiddenNight 3Bare');
  });

  it('tags its words where the author’s are in another language', () => {
    const children = sayNames([h('p', [name('Hidden')])], book, view, { lang: 'en' });
    const [said] = findAll({ type: 'root', children }, '.name-say');
    expect(said?.properties['lang']).toBe('en');
  });
});
