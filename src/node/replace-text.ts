import {
  accessSync,
  closeSync,
  constants,
  fchmodSync,
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
 * one or the new one at any time. Its permissions stay; where the path is a link, the file it leads to is replaced. A file
 * that may not be written to is left alone, though its folder would let it be replaced.
 * @param before The text as it was read.
 * @throws ChangedFileError when the file holds other bytes than `before` by now.
 */
export function replaceText(path: string, before: string, after: string): void {
  const target = realpathSync(path);
  accessSync(target, constants.W_OK);
  if (!readFileSync(target).equals(Buffer.from(before, 'utf8'))) {
    throw new ChangedFileError(
      `\`${path}\` was changed a moment ago, or is not UTF-8 text; nothing was written; look at it and try again`,
    );
  }
  const work = join(dirname(target), `.${basename(target)}.unfinished-${process.pid}`);
  try {
    writeWhole(work, after, statSync(target).mode);
    renameSync(work, target);
  } finally {
    rmSync(work, { force: true });
  }
}

/** Writes a new file to the disk, not only to memory. */
function writeWhole(path: string, text: string, mode: number): void {
  const file = openSync(path, 'wx', mode);
  try {
    // What the process takes away from the mode of new files is given back.
    fchmodSync(file, mode);
    writeFileSync(file, text);
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
}
