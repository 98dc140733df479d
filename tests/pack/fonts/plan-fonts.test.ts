import { h } from 'hastscript';
import { describe, expect, it } from 'vitest';
import { listFontFiles, renderFontFaces } from '../../../src/pack/fonts/font-faces.ts';
import { type FontCutter, type FontNeed, listFontNeeds, planFonts } from '../../../src/pack/fonts/plan-fonts.ts';

const element = (...parts: Parameters<typeof h>) =>
  [h(...parts)].flatMap((root) => (root.type === 'element' ? [root] : []));

/** A page as text, with the faces that its words need. */
function page(path: string, text: string, slanted = '') {
  const faces = renderFontFaces(listFontFiles(element('p', [text, h('em', slanted)]), ''));
  return { path, content: `<style>${faces}</style><p>${text}<em>${slanted}</em></p>` };
}

/** Remembers what it was asked for; its files hold the characters themselves. */
function fakeCutter(): FontCutter & { readonly asked: FontNeed[] } {
  const asked: FontNeed[] = [];
  return {
    licence: 'licence',
    asked,
    cut(need) {
      asked.push(need);
      return Promise.resolve(new TextEncoder().encode(`${need.face} ${need.characters}`));
    },
  };
}

describe('listFontFiles', () => {
  it('names regular and bold of each range, and italic where words are slanted', () => {
    expect(listFontFiles(element('p', ['Rā ', h('em', 'now')]), '')).toEqual([
      { face: 'regular', range: 'latin' },
      { face: 'bold', range: 'latin' },
      { face: 'regular', range: 'latin-ext' },
      { face: 'bold', range: 'latin-ext' },
      { face: 'italic', range: 'latin' },
    ]);
  });

  it('looks at words that styles put on the page too', () => {
    expect(listFontFiles([], 'ō').map(({ range }) => range)).toEqual(['latin-ext', 'latin-ext']);
  });

  it('needs none for a page without words', () => {
    expect(listFontFiles(element('svg', [h('path', { d: 'M0 0' })]), '')).toEqual([]);
  });
});

describe('listFontNeeds', () => {
  const needs = listFontNeeds([page('index.html', 'Zebra ō', 'so'), page('learners/index.html', 'abc')]);

  it('takes the learners’ characters from the learners’ pages alone', () => {
    const learners = needs.filter(({ path }) => path.startsWith('learners/'));
    expect(learners.map(({ path }) => path)).toEqual([
      'learners/fonts/andika-latin-regular.woff',
      'learners/fonts/andika-latin-bold.woff',
    ]);
    for (const { characters } of learners) expect(characters).not.toContain('Z');
  });

  it('holds every character of the pages', () => {
    expect(needs.find(({ path }) => path === 'fonts/andika-latin-ext-bold.woff')?.characters).toBe('ō');
    expect(needs.find(({ path }) => path === 'fonts/andika-latin-italic.woff')?.characters).toContain('Z');
  });
});

describe('planFonts', () => {
  it('cuts each file once and puts the licence beside the files', async () => {
    const cutter = fakeCutter();
    const files = await planFonts([page('index.html', 'abc'), page('learners/index.html', 'abc')], cutter);
    expect(files.map(({ path }) => path)).toEqual([
      'fonts/andika-latin-regular.woff',
      'fonts/andika-latin-bold.woff',
      'learners/fonts/andika-latin-regular.woff',
      'learners/fonts/andika-latin-bold.woff',
      'fonts/OFL.txt',
      'learners/fonts/OFL.txt',
    ]);
    expect(cutter.asked).toHaveLength(2);
  });

  it('plans none where no page has words', async () => {
    expect(await planFonts([{ path: 'index.html', content: '' }], fakeCutter())).toEqual([]);
  });
});
