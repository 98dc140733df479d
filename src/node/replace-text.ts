import {
  closeSync,
  fsyncSync,
  openSync,
  readFileSync,
  realpathSync,
  renameSync,
  rmSync,
  statSync,
  writeFileSync,
} from 'node:fs';
import { basename, dirname, join } from 'node:path';

/** The file is not what it was when it was read, or its bytes are no UTF-8 text. Nothing was written. */
export class ChangedFileError extends Error {
  override readonly name = 'ChangedFileError';
}

/**
 * Puts a new text in the place of a file's old one: written whole beside it, then renamed, so that the file is the old
 * one or the new one at any time. Its permissions stay; where the path is a link, the file it leads to is replaced.
 * @param before The text as it was read.
 * @throws ChangedFileError when the file holds other bytes than `before` by now.
 */
export function replaceText(path: string, before: string, after: string): void {
  const target = realpathSync(path);
  if (!readFileSync(target).equals(Buffer.from(before, 'utf8'))) {
    throw new ChangedFileError(
      `\`${path}\` was changed a moment ago, or is not UTF-8 text; nothing was written; look at it and try again`,
    );
  }
  const work = join(dirname(target), `.${basename(target)}.unfinished-${process.pid}`);
  try {
    const file = openSync(work, 'wx', statSync(target).mode);
    try {
      writeFileSync(file, after);
      fsyncSync(file);
    } finally {
      closeSync(file);
    }
    renameSync(work, target);
  } finally {
    rmSync(work, { force: true });
  }
}
