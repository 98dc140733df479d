import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { MANIFEST_PATH, type Manifest } from '../pack/manifest.ts';
import type { PackPlan } from '../pack/pack-plan.ts';
import { sha256 } from './sha256.ts';

/** The folder where a pack would go holds something that the kit did not put there. Nothing was written. */
export class ForeignFilesError extends Error {
  override readonly name = 'ForeignFilesError';
}

/**
 * Writes a pack to `<outFolder>/<plan.id>`: first whole beside it, then put in its place by renaming, so that a build
 * that fails half-way leaves the last good pack as it was.
 * @param replace Whether a pack that somebody has changed since it was built may go.
 * @returns Path of the pack's folder.
 * @throws ForeignFilesError when that would lose a file which the kit did not write.
 */
export function writePack(plan: PackPlan, outFolder: string, replace: boolean): string {
  const target = join(outFolder, plan.id);
  mkdirSync(outFolder, { recursive: true });
  const there = existsSync(target);
  if (there && !replace) refuseForeignFiles(target);
  const work = mkdtempSync(join(outFolder, '.unfinished-'));
  try {
    writeFiles(plan, join(work, 'new'));
    if (there) renameSync(target, join(work, 'old'));
    try {
      renameSync(join(work, 'new'), target);
    } catch (cause) {
      if (there) renameSync(join(work, 'old'), target);
      throw cause;
    }
  } finally {
    rmSync(work, { recursive: true, force: true });
  }
  return target;
}

function writeFiles(plan: PackPlan, folder: string): void {
  const folders = new Set(plan.files.map(({ path }) => dirname(join(folder, path))));
  for (const each of folders) mkdirSync(each, { recursive: true });
  for (const { path, content } of plan.files) writeFileSync(join(folder, path), content);
}

/** What operating systems leave in a folder that somebody has looked at. */
const LEFT_BY_SYSTEMS: ReadonlySet<string> = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini']);

function refuseForeignFiles(folder: string): void {
  const found = readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory() && !LEFT_BY_SYSTEMS.has(entry.name))
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    );
  if (found.length === 0) return;
  const manifest = readManifest(join(folder, MANIFEST_PATH));
  if (manifest === undefined) {
    throw new ForeignFilesError(
      `\`${folder}\` is there already and is not a pack of this kit; expected a free name; move it away, or choose another folder with \`--out\``,
    );
  }
  const digests = new Map(manifest.files.map((file) => [file.path, file.sha256]));
  for (const path of found.sort()) {
    if (path === MANIFEST_PATH) continue;
    const digest = digests.get(path);
    if (digest === undefined) throw describeForeign(folder, path, 'was put there by hand');
    if (digest !== sha256.hex(readFileSync(join(folder, path)))) {
      throw describeForeign(folder, path, 'was changed since the pack was built');
    }
  }
}

function describeForeign(folder: string, path: string, what: string): ForeignFilesError {
  return new ForeignFilesError(
    `\`${join(folder, path)}\` ${what}; a new build would lose it; move it away, or build with \`--replace\``,
  );
}

/** Undefined when there is no manifest of ours. */
function readManifest(path: string): Manifest | undefined {
  try {
    const found: Partial<Manifest> = JSON.parse(readFileSync(path, 'utf8'));
    // Only the file list is used, and a wrong one ends in a refusal, never in a loss.
    return found.format === 'lessontide-pack' && Array.isArray(found.files) ? (found as Manifest) : undefined;
  } catch {
    return undefined;
  }
}
