import { showPath } from './show-path.ts';

/** The file system does not hold or does not allow what was asked of it; the message says what to do. Exit status 1. */
export class FileError extends Error {
  override readonly name = 'FileError';
}

/** What the codes of the system mean, and what to do. */
const REASONS: Readonly<Record<string, string>> = {
  EACCES: 'may not be read or written by you; change its permissions, or name another place',
  EPERM: 'may not be read or written by you; change its permissions, or name another place',
  EROFS: 'is on a disk that cannot be written to; name another place',
  ENOENT: 'is not there, or is a link that leads nowhere; put it there, or take the link away',
  ENOTDIR: 'is a file, or lies below one, where a folder is needed; move the file away, or name another place',
  EEXIST: 'is there already and is no folder; move it away, or name another place',
  EISDIR: 'is a folder, where a file is needed; rename it, or move it away',
  ELOOP: 'is a link that leads back to itself; take it away',
  ENAMETOOLONG: 'has too long a name; choose a shorter one',
  ENOSPC: 'cannot be written, the disk is full; make room on it, then build again',
  EDQUOT: 'cannot be written, your share of the disk is full; make room on it, then build again',
  EBUSY: 'is in use by another program; close that program, then try again',
};

/**
 * The plain form of what the file system said; undefined for every other error, which is then one of the kit.
 * @param shown The path to name instead of the one that the system tells.
 */
export function findFileError(error: unknown, shown?: string): FileError | undefined {
  if (error instanceof FileError) return error;
  // `syscall` tells what the system refused from what a library of Node refused.
  if (!(error instanceof Error) || !('code' in error) || !('syscall' in error)) return undefined;
  const path = shown ?? ('path' in error ? String(error.path) : undefined);
  if (path === undefined) return undefined;
  const code = String(error.code);
  const reason = REASONS[code] ?? `could not be used (${code}); look at it, then try again`;
  return new FileError(`\`${showPath(path)}\` ${reason}`, { cause: error });
}
