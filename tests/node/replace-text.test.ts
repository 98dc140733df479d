import {
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { ChangedFileError, replaceText } from '../../src/node/replace-text.ts';

let work: string;
let path: string;

beforeEach(() => {
  work = mkdtempSync(join(tmpdir(), 'lessontide-replace-'));
  path = join(work, 'school.yaml');
  writeFileSync(path, 'old é\n');
});

afterEach(() => rmSync(work, { recursive: true, force: true }));

describe('replaceText', () => {
  it('replaces the text and leaves nothing else behind', () => {
    replaceText(path, 'old é\n', 'new è\n');
    expect(readFileSync(path, 'utf8')).toBe('new è\n');
    expect(readdirSync(work)).toEqual(['school.yaml']);
  });

  it.each([0o640, 0o664, 0o777])('keeps the permissions %o', (mode) => {
    chmodSync(path, mode);
    replaceText(path, 'old é\n', 'new\n');
    expect(statSync(path).mode & 0o777).toBe(mode);
  });

  it('leaves a file alone that may not be written to', () => {
    chmodSync(path, 0o440);
    // Who may do everything may do this too.
    if (process.getuid?.() === 0) expect(() => replaceText(path, 'old é\n', 'old é\n')).not.toThrow();
    else expect(() => replaceText(path, 'old é\n', 'new\n')).toThrow('EACCES');
    expect(readFileSync(path, 'utf8')).toBe('old é\n');
    expect(statSync(path).mode & 0o777).toBe(0o440);
  });

  it('replaces what a link leads to, not the link', () => {
    const link = join(work, 'link.yaml');
    symlinkSync(path, link);
    replaceText(link, 'old é\n', 'new\n');
    expect(readFileSync(path, 'utf8')).toBe('new\n');
    expect(readdirSync(work).sort()).toEqual(['link.yaml', 'school.yaml']);
  });

  it.each([
    ['somebody has changed the file', Buffer.from('other\n')],
    ['the bytes are no UTF-8 text', Buffer.from([0x6f, 0xff, 0x0a])],
  ])('writes nothing where %s', (_, bytes) => {
    writeFileSync(path, bytes);
    expect(() => replaceText(path, bytes.toString('utf8').replace('other', 'old'), 'new\n')).toThrow(ChangedFileError);
    expect(readFileSync(path).equals(bytes)).toBe(true);
    expect(readdirSync(work)).toEqual(['school.yaml']);
  });
});
