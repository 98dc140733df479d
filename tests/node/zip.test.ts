import { createHash } from 'node:crypto';
import { afterEach, describe, expect, it } from 'vitest';
import { zip } from '../../src/node/zip.ts';
import { readZip } from '../pack/qti/read-zip.ts';

const FILES = [
  { path: 'imsmanifest.xml', content: '<manifest/>' },
  { path: 'images/picture-1.png', content: new Uint8Array([0, 1, 2, 255]) },
  { path: 'empty.xml', content: '' },
  { path: 'long.xml', content: 'Tāne & <Kelp> '.repeat(500) },
];

/** Of these files, as first made; it changes with the version of the library alone. */
const DIGEST = '0e2da1d3acde1314e063e4e4a0734c4ae6ad6e9ea50632406d7b154a6c18268b';

const zone = process.env['TZ'];
afterEach(() => {
  if (zone === undefined) delete process.env['TZ'];
  else process.env['TZ'] = zone;
});

describe('an archive', () => {
  it('holds its files in order, byte for byte', () => {
    const encode = (content: string | Uint8Array) =>
      typeof content === 'string' ? new TextEncoder().encode(content) : content;
    expect(readZip(zip(FILES)).map(({ path, bytes }) => ({ path, bytes }))).toEqual(
      FILES.map(({ path, content }) => ({ path, bytes: encode(content) })),
    );
  });

  it('is smaller than its files', () => {
    expect(zip(FILES).length).toBeLessThan(1500);
  });

  it('is the same, and as old, in any zone', () => {
    const made = ['UTC', 'Pacific/Apia', 'America/Anchorage', 'Asia/Kathmandu'].map((name) => {
      process.env['TZ'] = name;
      const archive = zip(FILES);
      return {
        offset: new Date(1980, 0, 1).getTimezoneOffset(),
        stamps: new Set(readZip(archive).map(({ stamp }) => stamp)),
        digest: createHash('sha256').update(archive).digest('hex'),
      };
    });
    expect(new Set(made.map(({ offset }) => offset)).size).toBe(4);
    expect(made.map(({ stamps }) => [...stamps])).toEqual(made.map(() => ['1980-01-01 12:00']));
    expect([...new Set(made.map(({ digest }) => digest))]).toEqual([DIGEST]);
  });
});
