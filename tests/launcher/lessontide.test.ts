import { execFileSync, spawnSync } from 'node:child_process';
import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';

const BIN = join(import.meta.dirname, '../../src/launcher');

let folder: string;
let bundle: string;
let cache: string;

/** A bundle that prints a word and its arguments. */
function writeBundle(word: string): void {
  writeFileSync(
    bundle,
    `#!/usr/bin/env node\nconsole.log('${word}', require.resolve('node:fs'), __filename === ${JSON.stringify(bundle)});\n`,
  );
}

const run = () =>
  execFileSync(process.execPath, [join(folder, 'src/launcher/lessontide.cjs')], { encoding: 'utf8' }).trim();
const makeCache = () => execFileSync(process.execPath, [join(folder, 'src/launcher/make-code-cache.cjs')]);

beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'lessontide-launcher-'));
  mkdirSync(join(folder, 'src/launcher'), { recursive: true });
  mkdirSync(join(folder, 'dist'));
  for (const name of ['lessontide.cjs', 'make-code-cache.cjs'])
    copyFileSync(join(BIN, name), join(folder, 'src/launcher', name));
  bundle = join(folder, 'dist/lessontide.cjs');
  cache = join(folder, 'dist/lessontide.cache');
  writeBundle('one');
});

afterEach(() => rmSync(folder, { recursive: true, force: true }));

describe('the launcher', () => {
  it('runs the bundle without a cache', () => {
    expect(run()).toBe('one node:fs true');
  });

  it('runs the bundle with its cache', () => {
    makeCache();
    expect(existsSync(cache)).toBe(true);
    expect(run()).toBe('one node:fs true');
  });

  it('passes over the cache of another bundle of the same length', () => {
    makeCache();
    writeBundle('two');
    expect(run()).toBe('two node:fs true');
  });

  it.each([
    ['empty', (_: Buffer) => Buffer.alloc(0)],
    ['cut short', (bytes: Buffer) => bytes.subarray(0, bytes.length / 2)],
    ['of another engine', (bytes: Buffer) => Buffer.concat([bytes.subarray(0, 32), Buffer.alloc(64, 7)])],
  ])('passes over a cache that is %s', (_, spoil) => {
    makeCache();
    writeFileSync(cache, spoil(readFileSync(cache)));
    expect(run()).toBe('one node:fs true');
  });

  it.each([false, true])('tells where the bundle failed, with a cache: %s', (cached) => {
    writeFileSync(bundle, '#!/usr/bin/env node\nif (process.argv.length < 4)\n  throw new Error("failed");\n');
    if (cached) makeCache();
    const { status, stderr } = spawnSync(process.execPath, [join(folder, 'src/launcher/lessontide.cjs')], {
      encoding: 'utf8',
    });
    expect(status).toBe(1);
    expect(stderr).toContain(`${bundle}:3:9`);
  });
});
