import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'lessontide-judged-'));
afterAll(() => rmSync(folder, { recursive: true }));

function run(given: string) {
  const script = join(import.meta.dirname, 'second-judge.mjs');
  // A machine without Java: no program is found by its name.
  const env = { PATH: join(folder, 'empty'), NODE_OPTIONS: '' };
  const { status, stdout } = spawnSync(process.execPath, [script, given], { env, encoding: 'utf8' });
  return { status, stdout };
}

describe('the second judge of HTML', () => {
  it('is not content where there is nothing to judge', () => {
    expect(run(join(folder, 'gone'))).toMatchObject({ status: 1 });
    expect(run(folder).stdout).toContain('build a pack first');
  });

  it('says that it did not run where there is no Java, and lets the check go on', () => {
    writeFileSync(join(folder, 'index.html'), '<p>');
    expect(run(folder)).toEqual({
      status: 0,
      stdout: 'Second judge of HTML: there is no Java here, so it did not run.\n',
    });
  });
});
