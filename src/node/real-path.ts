import { realpathSync } from 'node:fs';
import { basename, dirname, join, resolve, sep } from 'node:path';

/**
 * The path of a file or folder with every link followed, as the disk spells it. Of a path that is not there yet, as far
 * as it is there, the rest as given.
 */
export function findRealPath(path: string): string {
  const whole = resolve(path);
  try {
    return realpathSync.native(whole);
  } catch {
    const above = dirname(whole);
    return above === whole ? whole : join(findRealPath(above), basename(whole));
  }
}

/** Whether a path is a folder or lies below it; both are real paths. */
export function isWithin(path: string, folder: string): boolean {
  return path === folder || path.startsWith(folder.endsWith(sep) ? folder : `${folder}${sep}`);
}
