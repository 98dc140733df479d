import { describe, expect, it } from 'vitest';
import { mergePdfs } from '../../../src/pack/pdf/merge-pdfs.ts';
import type { ReadAddress } from '../../../src/pack/pdf/open-part.ts';
import { listTitles, readPdf } from './read-pdf.ts';
import { type SmallPage, writeSmallPdf } from './small-pdf.ts';

const HEAD = { title: 'Nights (ō) for the teacher', language: 'en-NZ', maker: 'the kit', isOneSided: false };
const FOLDER = 'file:///packs/unfinished/';

/** As the kit reads them: below one folder are the pages, all else on this computer is nowhere. */
const readAddress: ReadAddress = (address) => {
  if (address.startsWith('https:')) return 'outside';
  if (!address.startsWith(FOLDER)) return undefined;
  const [path = '', anchor = ''] = address.slice(FOLDER.length).split('#');
  return { path, anchor };
};

function merge(pages: Readonly<Record<string, SmallPage>>): Uint8Array {
  const parts = Object.entries(pages).map(([path, page]) => ({
    path,
    title: page.title,
    headings: page.ownHeadings ?? [],
    bytes: writeSmallPdf(page),
  }));
  return mergePdfs(parts, HEAD, readAddress);
}

const latin1 = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');

describe('mergePdfs', () => {
  it('has the sheets of all parts in order, on their paper', async () => {
    const { sheets } = await readPdf(
      merge({ 'a.html': { title: 'A', text: 'First words' }, 'b.html': { title: 'B', text: 'Other words' } }),
    );
    expect(sheets.map(({ text }) => text)).toEqual(['First words', 'Other words']);
    expect(sheets.map(({ size }) => size)).toEqual(['210 x 297', '210 x 297']);
  });

  it('says its own title, language and maker, and no date, system or folder', async () => {
    const bytes = merge({ 'a.html': { title: 'A', links: [`${FOLDER}a.html`, `${FOLDER}c.html`] } });
    const { info, language, isMarked, pageMode } = await readPdf(bytes);
    expect(info).toMatchObject({ Title: HEAD.title, Creator: 'the kit', Producer: 'Skia/PDF m156' });
    expect([language, isMarked, pageMode]).toEqual(['en-NZ', true, 'UseOutlines']);
    expect(info).not.toHaveProperty('CreationDate');
    expect(latin1(bytes)).not.toMatch(/D:2026|Mozilla|file:|somebody/);
  });

  it('asks to be printed on one side where each sheet is for somebody else', () => {
    const part = { path: 'a.html', title: 'A', headings: [], bytes: writeSmallPdf({ title: 'A' }) };
    const [one, both] = [true, false].map((isOneSided) => mergePdfs([part], { ...HEAD, isOneSided }, readAddress));
    expect(latin1(one ?? new Uint8Array())).toContain('/Duplex /Simplex');
    expect(latin1(both ?? new Uint8Array())).not.toContain('/Duplex');
  });

  it('makes one tree of the tags, a part for each page', async () => {
    const { sheets } = await readPdf(merge({ 'a.html': { title: 'A' }, 'b.html': { title: 'B', links: ['#x'] } }));
    expect(sheets.map(({ tags }) => [...tags].slice(0, 3))).toEqual([
      ['Root', 'Document', 'Part'],
      ['Root', 'Document', 'Part'],
    ]);
    // Kinds that PDF 1.7 does not know are known by another name.
    expect(sheets.map(({ tags }) => [tags.has('Span'), tags.has('Strong'), tags.has('Link')])).toEqual([
      [true, false, false],
      [true, false, true],
    ]);
  });

  it('finds the tags of every sheet, however its keys were counted', async () => {
    const links = ['#x', `${FOLDER}gone.html`, '#x'];
    const bytes = merge({
      'a.html': { title: 'A', links, firstKey: 100_000 },
      'b.html': { title: 'B', links, firstKey: 1 },
      'c.html': { title: 'C', links, firstKey: 100_000 },
    });
    const { sheets } = await readPdf(bytes);
    expect(sheets.map(({ tags }) => [...tags])).toEqual(Array(3).fill(expect.arrayContaining(['Part', 'Link'])));
    // A page and its two links each, in order and without gaps.
    const keys = [...(/\/Nums \[(.*?)\]>>/s.exec(latin1(bytes))?.[1] ?? '').matchAll(/(\d+) \d+ 0 R|(\d+) \[/g)];
    expect(keys.map(([, link, page]) => Number(link ?? page))).toEqual([0, 1, 2, 3, 4, 5, 6, 7, 8]);
    expect(latin1(bytes)).toContain('/ParentTreeNextKey 9');
  });

  it('keeps names of cells apart, and in order', () => {
    const text = latin1(
      merge({ 'a.html': { title: 'A', cell: 'node00000412' }, 'b.html': { title: 'B', cell: 'node00000412' } }),
    );
    expect(text).not.toContain('node0');
    const named = (pattern: RegExp) => [...text.matchAll(pattern)].map(([, name]) => name);
    expect(named(/\/ID \((.*?)\)/g)).toEqual(['tag-000001', 'tag-000002']);
    expect(named(/\/Headers \[\((.*?)\)\]/g)).toEqual(['tag-000001', 'tag-000002']);
    expect(text).toMatch(/\/Names \[\(tag-000001\) \d+ 0 R \(tag-000002\) \d+ 0 R\]/);
  });

  it('has an entry of the outline for each part, closed, with its headings below', async () => {
    const { outline } = await readPdf(
      merge({
        'none.html': { title: 'Without headings' },
        'one.html': { title: 'Monday', headings: ['A lesson', 'First step', 'Second step'] },
        'flat.html': { title: 'Papers', headings: ['Heron', 'Kelp'], flat: true },
      }),
    );
    expect(outline).toMatchObject([
      { title: 'Without headings', sheet: 0, isOpen: false, below: [] },
      { title: 'Monday', sheet: 1, isOpen: false, below: [{ title: 'First step' }, { title: 'Second step' }] },
      { title: 'Papers', sheet: 2, isOpen: false, below: [{ title: 'Heron' }, { title: 'Kelp' }] },
    ]);
    expect(listTitles(outline)).toHaveLength(7);
  });

  it('calls entries of the outline as the page calls its headings', async () => {
    const { outline } = await readPdf(
      merge({
        'a.html': {
          title: 'Papers',
          headings: ['GroupHeronHeron', 'Other', 'GroupGroupKelp'],
          flat: true,
          ownHeadings: [['Not on paper'], ['Group ', 'Heron'], ['Group\n ', 'Kelp']],
        },
      }),
    );
    expect(outline[0]?.below.map(({ title }) => title)).toEqual(['Group Heron', 'Other', 'Group Kelp']);
  });

  it('turns links between its pages into links within, keeps those that leave, and drops all others', async () => {
    const bytes = merge({
      'a.html': {
        title: 'A',
        links: [
          `${FOLDER}b.html#step-2`,
          `${FOLDER}b.html`,
          `${FOLDER}b.html#not-there`,
          '#top',
          'https://example.org/\\(moon\\)',
          `${FOLDER}learners/c.html`,
          'file:///etc/hosts',
          'javascript:alert\\(1\\)',
        ],
        anchors: ['top'],
      },
      'b.html': { title: 'B', anchors: ['step-2'] },
    });
    const { sheets } = await readPdf(bytes);
    expect(sheets[0]?.links).toEqual([1, 1, 1, 0, 'https://example.org/(moon)']);
    const text = latin1(bytes);
    expect(text).not.toMatch(/file:|javascript/);
    // What was a link is plain words now; each key of a link that stayed leads to its tag.
    expect(text.match(/\/S \/Link/g)).toHaveLength(5);
    expect(text.match(/\/S \/Span/g)).toHaveLength(3);
    expect(text.match(/\/Type \/OBJR/g)).toHaveLength(5);
    expect(/\/Nums \[(.*?)\]>>/.exec(text)?.[1]?.match(/\d+ (?=\[|\d+ 0 R)/g)).toHaveLength(2 + 5);
  });

  it('finds places whose names are not ASCII', async () => {
    const { sheets } = await readPdf(
      merge({
        'a.html': { title: 'A', links: [`${FOLDER}b.html#nuit-é`] },
        'b.html': { title: 'B', anchors: ['other', 'nuit-#C3#A9'] },
      }),
    );
    expect(sheets[0]?.links).toEqual([1]);
  });

  it('gives the same bytes for what a browser numbers by chance', () => {
    const one = merge({ 'a.html': { title: 'A', cell: 'node00000404', anchors: ['x', 'y'] } });
    const other = merge({ 'a.html': { title: 'A', cell: 'node00000999', anchors: ['y', 'x'] } });
    expect(Buffer.from(one).equals(Buffer.from(other))).toBe(true);
  });

  it('refuses a page without tags', () => {
    const untagged = latin1(writeSmallPdf({ title: 'A' })).replace('/StructTreeRoot 7 0 R', '/StructTreeOops 7 0 R');
    const bytes = Buffer.from(untagged, 'latin1');
    expect(() => mergePdfs([{ path: 'a.html', title: 'A', headings: [], bytes }], HEAD, readAddress)).toThrow(
      'a file without tags',
    );
  });
});
