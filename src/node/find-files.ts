import { readdirSync, realpathSync, statSync } from 'node:fs';
import { join } from 'node:path';

/**
 * Names of all files below a folder, in code-point order, with forward slashes; none when the folder is not there.
 * Links are followed; one that leads nowhere is listed, so that reading it tells the author. Hidden files are passed
 * over: they are what editors and systems leave beside the author's own.
 */
export function findFiles(folder: string): string[] {
  if (!isFolder(folder)) return [];
  const names: string[] = [];
  // Real paths of the folders reached through links: one that leads back to itself would have no end.
  const seen = new Set([realpathSync(folder)]);
  const list = (prefix: string): void => {
    for (const entry of readdirSync(join(folder, prefix), { withFileTypes: true })) {
      const name = `${prefix}${entry.name}`;
      if (isHidden(entry.name)) continue;
      const isLink = entry.isSymbolicLink();
      const target = isLink ? statSync(join(folder, name), { throwIfNoEntry: false }) : entry;
      if (target === undefined || target.isFile()) names.push(name);
      else if (target.isDirectory() && !(isLink && hasSeen(seen, join(folder, name)))) list(`${name}/`);
    }
  };
  list('');
  return names.sort();
}

function hasSeen(seen: Set<string>, folder: string): boolean {
  const size = seen.size;
  return seen.add(realpathSync(folder)).size === size;
}

/** Whether a file or folder is one that systems do not show. */
export function isHidden(name: string): boolean {
  return name.startsWith('.');
}

/** Whether a path is a folder, or a link to one. */
export function isFolder(path: string): boolean {
  return statSync(path, { throwIfNoEntry: false })?.isDirectory() === true;
}
