import { chmodSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { type Computer, findChromium, thisComputer } from '../../src/node/find-chromium.ts';
import { PrintError } from '../../src/node/print-error.ts';

/** A computer on which these are the programs. */
function computer(
  platform: NodeJS.Platform,
  env: Readonly<Record<string, string>>,
  programs: readonly string[],
): Computer {
  return { platform, env, isProgram: (path) => programs.includes(path) };
}

const LINUX_PATH = '/usr/local/bin:/usr/bin:/bin';

describe('findChromium', () => {
  it.each([
    ['Debian', 'linux', { PATH: LINUX_PATH }, '/usr/bin/chromium'],
    ['an older Ubuntu', 'linux', { PATH: LINUX_PATH }, '/usr/bin/chromium-browser'],
    ['a snap that is not on the path', 'linux', { PATH: LINUX_PATH }, '/snap/bin/chromium'],
    ['Chrome on Linux, without a path', 'linux', {}, '/opt/google/chrome/chrome'],
    ['a folder of its own', 'linux', { PATH: `/home/me/my programs:${LINUX_PATH}` }, '/home/me/my programs/chromium'],
    ['a Mac', 'darwin', {}, '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome'],
    [
      'one user’s programs on a Mac',
      'darwin',
      { HOME: '/Users/me' },
      '/Users/me/Applications/Chromium.app/Contents/MacOS/Chromium',
    ],
    [
      'Windows',
      'win32',
      { ProgramFiles: 'C:\\Program Files', 'ProgramFiles(x86)': 'C:\\Program Files (x86)' },
      'C:\\Program Files (x86)\\Microsoft\\Edge\\Application\\msedge.exe',
    ],
    [
      'one user’s programs on Windows',
      'win32',
      { LocalAppData: 'C:\\Users\\me\\AppData\\Local' },
      'C:\\Users\\me\\AppData\\Local\\Google\\Chrome\\Application\\chrome.exe',
    ],
  ] as const)('finds the one of %s', (_name, platform, env, path) => {
    expect(findChromium(computer(platform, env, [path]))).toBe(path);
  });

  it('takes Chromium before what is made from it, and the first folder of the path', () => {
    const both = ['/usr/bin/google-chrome', '/usr/bin/chromium', '/bin/chromium'];
    expect(findChromium(computer('linux', { PATH: '/usr/bin:/bin' }, both))).toBe('/usr/bin/chromium');
  });

  it('takes the named one before all others', () => {
    const env = { PATH: '/usr/bin', CHROMIUM_PATH: '/my own/browser' };
    expect(findChromium(computer('linux', env, ['/usr/bin/chromium', '/my own/browser']))).toBe('/my own/browser');
  });

  it('does not pass over a named one that is not there', () => {
    const find = () =>
      findChromium(computer('linux', { PATH: '/usr/bin', CHROMIUM_PATH: '/gone' }, ['/usr/bin/chromium']));
    expect(find).toThrow(PrintError);
    expect(find).toThrow('`CHROMIUM_PATH` is `/gone`; expected the program file');
  });

  it('takes an empty name for none', () => {
    expect(findChromium(computer('linux', { PATH: '/usr/bin', CHROMIUM_PATH: '' }, ['/usr/bin/chromium']))).toBe(
      '/usr/bin/chromium',
    );
  });

  it.each(['linux', 'darwin', 'win32'] as const)('says what to do where there is none on %s', (platform) => {
    const find = () => findChromium(computer(platform, { PATH: '' }, []));
    expect(find).toThrow(PrintError);
    expect(find).toThrow(/no Chromium was found.*install.*or name .*`CHROMIUM_PATH`/);
  });
});

describe('a program', () => {
  it('is a file that may be run', () => {
    const folder = mkdtempSync(join(tmpdir(), 'lessontide-programs-'));
    mkdirSync(join(folder, 'Browser.app'));
    writeFileSync(join(folder, 'text.txt'), 'x', { mode: 0o644 });
    writeFileSync(join(folder, 'program'), '#!/bin/sh\n');
    chmodSync(join(folder, 'program'), 0o755);
    const found = ['Browser.app', 'text.txt', 'program', 'gone'].filter((name) =>
      thisComputer.isProgram(join(folder, name)),
    );
    expect(found).toEqual(['program']);
    rmSync(folder, { recursive: true });
  });
});
