import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { FileError } from '../../src/node/file-error.ts';
import { sha256 } from '../../src/node/sha256.ts';
import { clearUnfinished, writePack } from '../../src/node/write-pack.ts';
import { MANIFEST_PATH } from '../../src/pack/manifest.ts';
import type { PackFile, PackPlan } from '../../src/pack/pack-plan.ts';

const PLAIN = { replace: false, sources: [] };
const REPLACE = { replace: true, sources: [] };

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
      PLAIN,
    );
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('ō');
    expect([...readFileSync(join(folder, 'learners/images/a.png'))]).toEqual([0, 255]);
  });

  it('leaves nothing of an older pack', () => {
    writePack(planOf([{ path: 'old.html', content: 'old' }]), out, PLAIN);
    const folder = writePack(planOf([{ path: 'new.html', content: 'new' }]), out, PLAIN);
    expect(readdirSync(folder).sort()).toEqual(['new.html', MANIFEST_PATH]);
    expect(readdirSync(out)).toEqual(['week']);
  });

  it('leaves the last pack whole, and no litter, when writing fails half-way', () => {
    const folder = writePack(planOf([{ path: 'index.html', content: 'good' }]), out, PLAIN);
    // A file cannot stand where a folder must be.
    const impossible = planOf([
      { path: 'index.html', content: 'bad' },
      { path: 'index.html/page.html', content: 'bad' },
    ]);
    expect(() => writePack(impossible, out, PLAIN)).toThrow();
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('good');
    expect(readdirSync(out)).toEqual(['week']);
  });

  it('does not mind what systems leave behind, nor an empty folder', () => {
    const folder = writePack(planOf([{ path: 'index.html', content: '1' }]), out, PLAIN);
    writeFileSync(join(folder, '.DS_Store'), '');
    writePack(planOf([{ path: 'index.html', content: '2' }]), out, PLAIN);
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('2');
  });

  it('refuses a folder whose manifest is not one', () => {
    const folder = writePack(planOf([]), out, PLAIN);
    writeFileSync(join(folder, MANIFEST_PATH), '{"format":');
    expect(() => writePack(planOf([]), out, PLAIN)).toThrow('is not a pack of this kit');
    expect(existsSync(join(folder, MANIFEST_PATH))).toBe(true);
  });

  it('replaces a pack of ours that was changed only when told to', () => {
    const folder = writePack(planOf([{ path: 'index.html', content: 'old' }]), out, PLAIN);
    writeFileSync(join(folder, 'index.html'), 'mine');
    const plan = planOf([{ path: 'index.html', content: 'new' }]);
    expect(() => writePack(plan, out, PLAIN)).toThrow('was changed since');
    writePack(plan, out, REPLACE);
    expect(readFileSync(join(folder, 'index.html'), 'utf8')).toBe('new');
  });

  it.each([
    ['no manifest', undefined],
    ['a manifest of something else', '{"format":"other","files":[]}'],
    ['a manifest with odd files', '{"format":"lessontide-pack","files":[null]}'],
  ])('never replaces a folder with files and %s', (_name, manifest) => {
    mkdirSync(join(out, 'week'), { recursive: true });
    writeFileSync(join(out, 'week/monday.md'), 'mine');
    if (manifest !== undefined) writeFileSync(join(out, 'week', MANIFEST_PATH), manifest);
    expect(() => writePack(planOf([]), out, REPLACE)).toThrow('is not a pack of this kit');
    expect(readFileSync(join(out, 'week/monday.md'), 'utf8')).toBe('mine');
  });

  it.each([PLAIN, REPLACE])('refuses a link and a file in its place: %j', (options) => {
    const elsewhere = join(out, '../elsewhere');
    mkdirSync(elsewhere, { recursive: true });
    mkdirSync(out);
    symlinkSync('../elsewhere', join(out, 'week'));
    expect(() => writePack(planOf([]), out, options)).toThrow(`\`${join(out, 'week')}\` is a symbolic link`);
    expect(readdirSync(elsewhere)).toEqual([]);
    rmSync(join(out, 'week'));
    symlinkSync('nowhere', join(out, 'week'));
    expect(() => writePack(planOf([]), out, options)).toThrow('is a symbolic link');
    rmSync(join(out, 'week'));
    writeFileSync(join(out, 'week'), 'mine');
    expect(() => writePack(planOf([]), out, options)).toThrow('is a file;');
    expect(readdirSync(out)).toEqual(['week']);
  });

  it.each([
    ['is one', 'week'],
    ['lies in one', '.'],
    ['holds one', 'week/lessons/mine'],
  ])('refuses a place that %s of the author’s folders', (_name, source) => {
    const folder = join(out, source);
    mkdirSync(folder, { recursive: true });
    const before = readdirSync(out, { recursive: true });
    const options = { replace: true, sources: [folder] };
    expect(() => writePack(planOf([]), out, options)).toThrow(`your own folder \`${folder}\``);
    expect(readdirSync(out, { recursive: true })).toEqual(before);
  });

  it('sees through links to the author’s folders, and not too far', () => {
    const sources = [join(out, 'lessons/week')];
    mkdirSync(join(out, 'lessons/week'), { recursive: true });
    symlinkSync('lessons', join(out, 'packs'));
    expect(() => writePack(planOf([]), join(out, 'packs'), { replace: true, sources })).toThrow('your own folder');
    // A name that only begins like the other's is another place.
    expect(() =>
      writePack({ ...planOf([]), id: 'week-2' }, join(out, 'packs'), { replace: true, sources }),
    ).not.toThrow();
  });

  it('says in plain words what the system refuses', () => {
    writeFileSync(out, 'a file');
    expect(() => writePack(planOf([]), out, PLAIN)).toThrow(FileError);
    expect(() => writePack(planOf([]), out, PLAIN)).toThrow(`\`${out}\` is there already and is no folder`);
    expect(() => writePack(planOf([]), join(out, 'below'), PLAIN)).toThrow('where a folder is needed');
  });

  it('names the folder that cannot be written, not its own folder of work', () => {
    // Every user is refused a name of more than 255 bytes.
    const plan = planOf([{ path: `${'a'.repeat(300)}.html`, content: '' }]);
    expect(() => writePack(plan, out, PLAIN)).toThrow(`\`${out}\` has too long a name`);
    expect(readdirSync(out)).toEqual([]);
  });
});

describe('clearUnfinished', () => {
  it('takes away what old builds left, and nothing else', () => {
    const names = ['.unfinished-aB3xyZ', '.unfinished-young1', '.unfinished-notes', '.unfinished-longer-name', 'week'];
    for (const name of names) mkdirSync(join(out, name, 'new'), { recursive: true });
    writeFileSync(join(out, '.unfinished-afile1'), '');
    const nowMs = Date.now();
    const old = new Date(nowMs - 2 * 3_600_000);
    for (const name of readdirSync(out)) if (name !== '.unfinished-young1') utimesSync(join(out, name), old, old);
    clearUnfinished(out, nowMs);
    expect(readdirSync(out).sort()).toEqual(
      ['.unfinished-afile1', '.unfinished-longer-name', '.unfinished-notes', '.unfinished-young1', 'week'].sort(),
    );
  });

  it('does not mind that there is no folder yet', () => {
    expect(() => clearUnfinished(out, 0)).not.toThrow();
  });
});
