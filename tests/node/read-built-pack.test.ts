import { mkdirSync, mkdtempSync, rmSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { readLearnersPart } from '../../src/node/read-built-pack.ts';
import { sha256 } from '../../src/node/sha256.ts';

let pack: string;

beforeEach(() => {
  pack = mkdtempSync(join(tmpdir(), 'lessontide-built-'));
  mkdirSync(join(pack, 'learners', 'images', '.deep'), { recursive: true });
  writeFileSync(join(pack, 'learners', 'a.html'), 'kept');
  writeFileSync(join(pack, 'learners', 'b.html'), 'changed');
  writeFileSync(join(pack, 'learners', 'images', '.deep', 'c.png'), 'new');
  writeFileSync(join(pack, 'learners', 'Thumbs.db'), 'left by a system');
  writeFileSync(join(pack, 'key.html'), 'the teacher’s');
  const files = ['a', 'b'].map((name) => ({ path: `learners/${name}.html`, sha256: sha256.hex('kept') }));
  writeFileSync(join(pack, 'pack.json'), JSON.stringify({ format: 'lessontide-pack', files }));
});

afterEach(() => rmSync(pack, { recursive: true, force: true }));

describe('the learners’ part of a pack', () => {
  it('is read whole, and it is told what was changed', () => {
    symlinkSync(join(pack, 'key.html'), join(pack, 'learners', 'link.html'));
    const files = readLearnersPart(pack).map(({ path, content, isKept }) => [
      path,
      new TextDecoder().decode(content),
      isKept,
    ]);
    expect(files).toEqual([
      ['learners/a.html', 'kept', true],
      ['learners/b.html', 'changed', false],
      ['learners/images/.deep/c.png', 'new', false],
      ['learners/link.html', 'the teacher’s', false],
    ]);
  });

  it('is nothing where there is no pack of the kit', () => {
    writeFileSync(join(pack, 'pack.json'), '{}');
    expect(readLearnersPart(pack)).toEqual([]);
    expect(readLearnersPart(join(pack, 'nowhere'))).toEqual([]);
  });
});
