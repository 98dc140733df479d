import { readFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { describe, expect, it } from 'vitest';
import { FileError, findFileError } from '../../src/node/file-error.ts';

/** An error as Node makes it for what the system refuses; a test cannot bring about each for every user. */
function refuse(code: string, path: string): Error {
  return Object.assign(new Error(`${code}: refused, open '${path}'`), { code, syscall: 'open', errno: -1, path });
}

function readRefusal(path: string): unknown {
  try {
    return readFileSync(path);
  } catch (error) {
    return error;
  }
}

describe('findFileError', () => {
  it.each([
    ['EACCES', 'may not be read or written by you'],
    ['EPERM', 'may not be read or written by you'],
    ['EROFS', 'cannot be written to'],
    ['ENOSPC', 'the disk is full'],
    ['ESTALE', 'could not be used (ESTALE)'],
  ])('says %s in plain words, with the path', (code, reason) => {
    const found = findFileError(refuse(code, 'packs\\week'));
    expect(found).toBeInstanceOf(FileError);
    expect(found?.message).toContain(`\`packs/week\` `);
    expect(found?.message).toContain(reason);
    expect(found?.message).not.toContain('\n');
  });

  it('knows what Node itself throws', () => {
    // This one does not tell its path.
    expect(findFileError(readRefusal(tmpdir()), 'a.md')?.message).toContain(
      '`a.md` is a folder, where a file is needed',
    );
    expect(findFileError(readRefusal(`${tmpdir()}/nowhere/at-all`))?.message).toContain('at-all` is not there');
  });

  it('shows another path when told to', () => {
    expect(findFileError(refuse('EACCES', 'a/b'), 'a')?.message).toMatch(/^`a` /);
  });

  it('takes no mistake of the kit for a refusal', () => {
    expect(findFileError(new TypeError('x is not a function'))).toBeUndefined();
    expect(findFileError(Object.assign(new Error('Bad argument'), { code: 'ERR_INVALID_ARG_TYPE' }))).toBeUndefined();
    expect(findFileError('a string')).toBeUndefined();
  });
});
