import { statSync } from 'node:fs';
import { join } from 'node:path';
import type { AssetKind, ContentAssets } from '../content/media/content-assets.ts';
import { findFiles } from './find-files.ts';
import { readBytes } from './read-source.ts';
import { sha256 } from './sha256.ts';
import { showPath } from './show-path.ts';

/**
 * The pictures and sounds of a content folder: `images` and `sounds` below it. Nothing is looked at before it is asked
 * for, and each folder once. Links are followed, as those to other content are.
 */
export function createAssets(folder: string): ContentAssets {
  const listed = new Map<AssetKind, readonly string[]>();
  const pathOf = (kind: AssetKind, file: string) => join(folder, kind, file);
  return {
    list(kind) {
      const files = listed.get(kind) ?? findFiles(join(folder, kind));
      listed.set(kind, files);
      return files;
    },
    showPath: (kind, file) => showPath(pathOf(kind, file)),
    read(kind, file, mostBytes) {
      const path = pathOf(kind, file);
      // A link that leads nowhere has no size; reading it says so.
      const sizeBytes = statSync(path, { throwIfNoEntry: false })?.size ?? 0;
      return sizeBytes > mostBytes ? { sizeBytes } : { bytes: readBytes(path) };
    },
    digest: sha256.hex,
  };
}
