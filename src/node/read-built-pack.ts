import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import { LEARNERS_FOLDER } from '../directives/page-names.ts';
import { MANIFEST_PATH } from '../pack/manifest.ts';
import { isFolder } from './find-files.ts';
import { readBytes } from './read-source.ts';
import { sha256 } from './sha256.ts';
import { showPath } from './show-path.ts';
import { LEFT_BY_SYSTEMS, readManifest } from './write-pack.ts';

/** A file of a pack as it lies on the disk. */
export interface BuiltFile {
  /** From the pack's root, with forward slashes. */
  readonly path: string;
  readonly content: Uint8Array;
  /** Whether it is as the kit has written it. */
  readonly isKept: boolean;
}

/**
 * All files that learners get of a pack that was built, hidden ones among them, in order of path. None where there is no
 * such pack.
 * @throws FileError when the system refuses.
 */
export function readLearnersPart(packFolder: string): BuiltFile[] {
  const manifest = readManifest(join(packFolder, MANIFEST_PATH));
  const folder = join(packFolder, LEARNERS_FOLDER);
  if (manifest === undefined || !isFolder(folder)) return [];
  const digests = new Map(manifest.files.map((file) => [file.path, file.sha256]));
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !LEFT_BY_SYSTEMS.has(entry.name))
    .map((entry) => join(entry.parentPath, entry.name))
    .filter((path) => !isFolder(path))
    .map((path) => showPath(path.slice(packFolder.length + 1)))
    .sort()
    .map((path) => {
      const content = readBytes(join(packFolder, path));
      return { path, content, isKept: digests.get(path) === sha256.hex(content) };
    });
}
