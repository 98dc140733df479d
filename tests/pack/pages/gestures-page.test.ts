import type { Element, Root } from 'hast';
import { describe, expect, it } from 'vitest';
import type { Calendar, ContentSound, Gesture } from '../../../src/content/types.ts';
import { planMediaFiles } from '../../../src/pack/plan-media.ts';
import { buildFakeWeek } from '../fake-week.ts';
import { findAll, readText, renderPages } from '../render-pages.ts';

const renderGestures = (...options: Parameters<typeof buildFakeWeek>) => {
  const page = renderPages(buildFakeWeek(...options)).get('gestures.html');
  if (page === undefined) throw new Error('No page of gestures.');
  return page;
};
const inside = (element: Element | undefined, selector: string) =>
  element === undefined ? [] : findAll({ type: 'root', children: [element] }, selector);
const listHrefs = (page: Root | Element, selector: string) =>
  (page.type === 'root' ? findAll(page, selector) : inside(page, selector)).map(({ properties }) => properties['href']);

const wave: Gesture = {
  right: { shape: 'open', at: 'face', palm: 'front', fingers: 'up' },
  move: 'hold',
  cue: 'Lift one hand.',
  seated: 'The same, seated.',
};
const groups = (...gestures: (string | undefined)[]): Calendar['groups'] => [
  {
    name: 'Eau noire',
    nights: gestures.map((gesture, index) => ({
      name: `Eau noire ${index + 1}`,
      ...(gesture === undefined ? {} : { gesture }),
    })),
  },
  ...['Eau claire', 'Eau basse'].map((name) => ({
    name,
    nights: Array.from({ length: 14 }, (_, index) => ({ name: `${name} ${index + 1}` })),
  })),
];

describe('renderGesturesPage', () => {
  it('has a card for every night of the calendar, by groups, those too that the month leaves out', () => {
    const page = renderGestures();
    expect(findAll(page, 'h2').map(readText)).toEqual([
      'How to read a drawing',
      'Eau noire 10',
      'Eau claire 10',
      'Eau basse 10',
    ]);
    const cards = findAll(page, '.how-card');
    expect(cards.map(({ properties }) => properties['id'])).toEqual(
      Array.from({ length: 30 }, (_, index) => `night-${index + 1}`),
    );
    expect(cards[10] && readText(cards[10])).toBe(
      [
        '1Eau claire 1',
        'say: dire Eau claire 1',
        'Lift one hand.',
        'Seated: The same, seated.',
        'facing you',
        'your own hands',
        'in a mirror',
        'seated, facing you',
      ].join(''),
    );
  });

  it('draws each view once and shows it wherever it is wanted; in a mirror is facing, flipped', () => {
    const page = renderGestures({ gestures: { gestures: { wave } } });
    const drawn = findAll(page, 'symbol').map(({ properties }) => String(properties['id']));
    expect(drawn).toEqual([...new Set(drawn)]);
    expect(drawn.filter((id) => id.startsWith('figure-'))).toEqual([
      'figure-1-facing',
      'figure-1-own',
      'figure-1-facing-seated',
    ]);
    const [card] = findAll(page, '.how-card');
    const uses = inside(card, 'use').map(({ properties }) => [properties['href'], 'transform' in properties]);
    expect(uses).toEqual([
      ['#figure-1-facing', false],
      ['#figure-1-own', false],
      ['#figure-1-facing', true],
      ['#figure-1-facing-seated', false],
    ]);
    for (const href of listHrefs(page, 'use')) expect(drawn).toContain(String(href).slice(1));
  });

  it('shows the author’s own picture once, with its credit, and packs it', () => {
    const picture = {
      file: 'a.png',
      packName: 'picture-1.png',
      widthPx: 9,
      heightPx: 9,
      bytes: Uint8Array.of(1),
      credit: 'Ana',
    };
    const week = {
      gestures: { gestures: { wave: { ...wave, picture } } },
      calendar: { groups: groups('wave', undefined) },
    };
    const page = renderGestures(week);
    const [card] = findAll(page, '.how-card');
    expect(inside(card, 'figcaption').map(readText)).toEqual(['picture for all views']);
    expect(findAll(page, 'image').map(({ properties }) => properties['href'])).toEqual(['images/picture-1.png']);
    expect(findAll(page, '.how-credit').map(readText)).toEqual(['Pictures: Ana']);
    expect(planMediaFiles(buildFakeWeek(week), new Map())).toEqual([
      { path: 'images/picture-1.png', content: picture.bytes },
    ]);
  });

  it('plays a spoken name without a script, gives an address in words, and names who is heard once', () => {
    const terms = { credit: 'Room 4', permission: 'for this school only' };
    const sound: ContentSound = {
      file: 'a.mp3',
      packName: 's-1.mp3',
      mediaType: 'audio/mpeg',
      bytes: Uint8Array.of(2),
    };
    const spokenNames = new Map([
      [1, { sound, ...terms }],
      [30, { link: 'https://recordings.example/30', ...terms }],
    ]);
    const page = renderGestures({ calendar: { spokenNames } });
    expect(findAll(page, 'audio').map(({ properties }) => properties)).toMatchObject([
      { src: 'sound/s-1.mp3', controls: true, ariaLabelledBy: ['night-1-name'] },
    ]);
    expect(String(findAll(page, 'meta')[0]?.properties['content'])).toContain("media-src 'self'");
    expect(findAll(page, 'script')).toEqual([]);
    const last = findAll(page, '.how-card').at(-1);
    expect(last && listHrefs(last, 'a')).toEqual(['https://recordings.example/30']);
    expect(findAll(page, '.how-credit').map(readText)).toEqual(['Spoken names: Room 4 · for this school only']);
    const packed = planMediaFiles(buildFakeWeek({ calendar: { spokenNames } }), new Map());
    expect(packed).toEqual([{ path: 'sound/s-1.mp3', content: sound.bytes }]);
  });

  it('says it of a night that has no gesture, and kindly of a calendar that has none at all', () => {
    const some = renderGestures({ calendar: { groups: groups('wave', undefined) } });
    const [, without] = findAll(some, '.how-card');
    expect(without && readText(without)).toBe('2Eau noire 2no gesture yet');
    expect(inside(without, 'figure')).toEqual([]);
    const none = renderGestures({ calendar: { groups: groups(undefined, undefined) } });
    expect(readText(none)).toContain('No night of this calendar has a gesture yet.');
    expect(findAll(none, 'h2')).toEqual([]);
    expect(findAll(none, 'main').flatMap((main) => inside(main, 'svg'))).toEqual([]);
  });

  it('says what the author says of the gestures', () => {
    expect(readText(renderGestures({ gestures: { note: 'Made up by us.' } }))).toContain('Made up by us.');
  });
});

describe('ways to the page of gestures', () => {
  const pages = renderPages(
    buildFakeWeek({ lessons: [{ head: { day: 'monday' }, hasRun: true }, { head: { day: 'tuesday' } }] }),
  );
  const page = (path: string) => pages.get(path) ?? { type: 'root', children: [] };

  it('are in the list of pages of each of the teacher’s pages, and in none of the learners’', () => {
    for (const [path, tree] of pages) {
      expect(listHrefs(tree, 'a').includes('gestures.html'), path).toBe(!path.startsWith('learners/'));
    }
  });

  it('lead from the nights of the score, and from each day with a run', () => {
    const [list] = findAll(page('score.html'), '.score-list');
    const hrefs = list ? listHrefs(list, 'a') : [];
    expect(hrefs).toHaveLength(29);
    expect(hrefs[4]).toBe('gestures.html#night-5');
    const days = findAll(page('index.html'), '.to-do').map((day) => listHrefs(day, 'a').includes('gestures.html'));
    expect(days).toEqual([true, false]);
  });
});
