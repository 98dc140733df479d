import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { sha256 } from '../../src/node/sha256.ts';
import { writePack } from '../../src/node/write-pack.ts';
import { MANIFEST_PATH } from '../../src/pack/manifest.ts';
import type { PackFile, PackPlan } from '../../src/pack/pack-plan.ts';

let out: string;

beforeEach(() => {
  out = join(mkdtempSync(join(tmpdir(), 'lessontide-write-')), 'packs');
});

afterEach(() => rmSync(join(out, '..'), { recursive: true, force: true }));

/** A plan whose manifest lists the given files. */
function planOf(files: readonly PackFile[]): PackPlan {
  const listed = files.map(({ path, content }) => ({ path, sha256: sha256.hex(content) }));
  const manifest = { path: MANIFEST_PATH, content: JSON.stringify({ format: 'lessontide-pack', files: listed }) };
  return { id: 'week', files: [...files, manifest] };
}

describe('writePack', () => {
  it('writes text and bytes, in folders', () => {
    const folder = writePack(
      planOf([
        { path: 'index.html', content: 'ō' },
        { path: 'learners/images/a.png', content: new Uint8Array([0, 255]) },
      ]),
      out,
      false,
    );
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('ō');
    expect([...readFileSync(join(folder, 'learners/images/a.png'))]).toEqual([0, 255]);
  });

  it('leaves nothing of an older pack', () => {
    writePack(planOf([{ path: 'old.html', content: 'old' }]), out, false);
    const folder = writePack(planOf([{ path: 'new.html', content: 'new' }]), out, false);
    expect(readdirSync(folder).sort()).toEqual(['new.html', MANIFEST_PATH]);
    expect(readdirSync(out)).toEqual(['week']);
  });

  it('leaves the last pack whole, and no litter, when writing fails half-way', () => {
    const folder = writePack(planOf([{ path: 'index.html', content: 'good' }]), out, false);
    // A file cannot stand where a folder must be.
    const impossible = planOf([
      { path: 'index.html', content: 'bad' },
      { path: 'index.html/page.html', content: 'bad' },
    ]);
    expect(() => writePack(impossible, out, false)).toThrow();
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('good');
    expect(readdirSync(out)).toEqual(['week']);
  });

  it('does not mind what systems leave behind, nor an empty folder', () => {
    const folder = writePack(planOf([{ path: 'index.html', content: '1' }]), out, false);
    writeFileSync(join(folder, '.DS_Store'), '');
    writePack(planOf([{ path: 'index.html', content: '2' }]), out, false);
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('2');
  });

  it('refuses a folder whose manifest is not one', () => {
    const folder = writePack(planOf([]), out, false);
    writeFileSync(join(folder, MANIFEST_PATH), '{"format":');
    expect(() => writePack(planOf([]), out, false)).toThrow('is not a pack of this kit');
    expect(existsSync(join(folder, MANIFEST_PATH))).toBe(true);
  });
});
