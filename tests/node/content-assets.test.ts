import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { createAssets } from '../../src/node/content-assets.ts';
import { readContent } from '../../src/node/read-content.ts';

let folder: string;

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lessontide-assets-'));
  mkdirSync(join(folder, 'images/birds'), { recursive: true });
  writeFileSync(join(folder, 'images/swan.svg'), 'swan');
  writeFileSync(join(folder, 'images/birds/heron.png'), 'heron');
  writeFileSync(join(folder, 'images/.hidden.png'), '');
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('createAssets', () => {
  it('lists the files of a kind; of one without a folder, none', () => {
    const assets = createAssets(folder);
    expect(assets.list('images')).toEqual(['birds/heron.png', 'swan.svg']);
    expect(assets.list('sounds')).toEqual([]);
  });

  it('looks at nothing before it is asked', () => {
    const { assets } = readContent(folder);
    rmSync(join(folder, 'images/swan.svg'));
    expect(assets?.list('images')).toEqual(['birds/heron.png']);
    writeFileSync(join(folder, 'images/late.png'), '');
    expect(assets?.list('images')).toEqual(['birds/heron.png']);
  });

  it('reads a file, unless it is too large', () => {
    const assets = createAssets(folder);
    expect(assets.read('images', 'birds/heron.png', 5)).toEqual({ bytes: Buffer.from('heron') });
    expect(assets.read('images', 'birds/heron.png', 4)).toEqual({ sizeBytes: 5 });
  });

  it('shows paths and gives digests', () => {
    const assets = createAssets(folder);
    expect(assets.showPath('images', 'birds/heron.png')).toBe(`${folder}/images/birds/heron.png`);
    // SHA-256 of "abc": FIPS 180-2, appendix B.1.
    expect(assets.digest(Buffer.from('abc'))).toBe('ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad');
  });

  it('follows links, and says which one leads nowhere', () => {
    writeFileSync(join(folder, 'elsewhere.png'), 'crane');
    symlinkSync('../elsewhere.png', join(folder, 'images/crane.png'));
    symlinkSync('nowhere.png', join(folder, 'images/lost.png'));
    const assets = createAssets(folder);
    expect(assets.read('images', 'crane.png', 9)).toEqual({ bytes: Buffer.from('crane') });
    expect(() => assets.read('images', 'lost.png', 9)).toThrow(
      `\`${join(folder, 'images/lost.png')}\` is not there, or is a link that leads nowhere`,
    );
  });
});
