import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readSource } from '../../src/node/read-source.ts';

let folder: string;

beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'lessontide-source-'));
});

afterAll(() => rmSync(folder, { recursive: true, force: true }));

function read(bytes: Uint8Array | string) {
  const path = join(folder, 'a.md');
  writeFileSync(path, bytes);
  return readSource(path);
}

describe('readSource', () => {
  it.each(['', 'plain', 'café, 月, 🌕\r\n', '\uFEFFmarked', 'a written \uFFFD stays'])('reads %j', (text) => {
    expect(read(text)).toEqual({ path: expect.stringMatching(/\/a\.md$/), text });
  });

  it.each([
    ['Latin-1', Buffer.from('one\ntwo café\n', 'latin1'), 2, 8, 'E9'],
    ['Latin-1 at the end', Buffer.from('caf\u00e9', 'latin1'), 1, 4, 'E9'],
    ['letters of several bytes before it', Buffer.concat([Buffer.from('é🌕'), Buffer.from([0xff])]), 1, 4, 'FF'],
    [
      'a replacement sign of the author before it',
      Buffer.concat([Buffer.from('\uFFFD'), Buffer.from([0x80])]),
      1,
      2,
      '80',
    ],
    ['lines that end in CR', Buffer.from('one\rtwo\rcaf\u00e9', 'latin1'), 3, 4, 'E9'],
    ['lines that end in CRLF', Buffer.from('one\r\ntwo\r\ncaf\u00e9', 'latin1'), 3, 4, 'E9'],
    ['UTF-16 with a mark', Buffer.from('\uFEFFtext', 'utf16le'), 1, 1, 'FF'],
    ['UTF-16 without a mark', Buffer.from('text', 'utf16le'), 1, 2, '00'],
    ['a zero byte', Buffer.from('one\ntw\0o'), 2, 3, '00'],
    ['half of a surrogate pair', Buffer.from([0x61, 0xed, 0xa0, 0x80]), 1, 2, 'ED'],
  ] as const)('finds the first odd byte: %s', (_name, bytes, line, column, found) => {
    const { text, fault } = read(bytes);
    expect(text).toBe('');
    expect(fault).toMatchObject({ rule: 'text-encoding', severity: 'error', place: { line, column }, found });
    expect(fault?.message).toContain('is not saved as UTF-8');
    expect(fault?.message).toContain('save it again as UTF-8');
  });

  it('names a file that cannot be read', () => {
    expect(() => readSource(folder)).toThrow(`\`${folder}\` is a folder, where a file is needed`);
  });
});
