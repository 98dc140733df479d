import {
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  type Stats,
  writeFileSync,
} from 'node:fs';
import { dirname, join } from 'node:path';
import { MANIFEST_PATH, type Manifest } from '../pack/manifest.ts';
import type { PackPlan } from '../pack/pack-plan.ts';
import { findFileError } from './file-error.ts';
import { findRealPath, isWithin } from './real-path.ts';
import { sha256 } from './sha256.ts';
import { showPath } from './show-path.ts';

/** The folder where a pack would go holds something that the kit did not put there. Nothing was written. */
export class ForeignFilesError extends Error {
  override readonly name = 'ForeignFilesError';
}

/** How a pack may be put in its place. */
export interface WriteOptions {
  /** Whether a pack that somebody has changed since it was built may go. Nothing else ever goes. */
  readonly replace: boolean;
  /** Folders of the author: a pack never stands in place of one, in one, or around one. */
  readonly sources: readonly string[];
}

/** Beginning of the names of folders in which something is in work. */
export const WORK_PREFIX = '.unfinished-';

/**
 * Writes a pack to `<outFolder>/<plan.id>`: first whole beside it, then put in its place by renaming, so that a build
 * that fails half-way leaves the last good pack as it was.
 * @returns Path of the pack's folder.
 * @throws ForeignFilesError when that would lose a file which the kit did not write, or touch the author's folders.
 * @throws FileError when the system refuses.
 */
export function writePack(plan: PackPlan, outFolder: string, { replace, sources }: WriteOptions): string {
  const target = join(outFolder, plan.id);
  refuseSources(target, sources);
  try {
    mkdirSync(outFolder, { recursive: true });
    const there = lstatSync(target, { throwIfNoEntry: false });
    if (there !== undefined) refuseForeign(target, there, replace);
    placePack(plan, target, there !== undefined);
    return target;
  } catch (error) {
    throw findFileError(error, findShownPath(error)) ?? error;
  }
}

function placePack(plan: PackPlan, target: string, there: boolean): void {
  const work = mkdtempSync(join(dirname(target), WORK_PREFIX));
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
}

/** The folder of work has a name that tells an author nothing: the one around it is shown. */
function findShownPath(error: unknown): string | undefined {
  const path = error instanceof Error && 'path' in error ? String(error.path) : '';
  const at = showPath(path).indexOf(`/${WORK_PREFIX}`);
  return at === -1 ? undefined : path.slice(0, at);
}

const HOUR_MS = 3_600_000;

/** What `mkdtemp` makes of the prefix: six letters or digits more. */
const WORK_NAME = /^\.unfinished-[A-Za-z0-9]{6}$/;

/**
 * Takes away what builds that were stopped half-way have left in a folder for packs. Younger ones may be at work.
 * @param nowMs Milliseconds since 1970.
 */
export function clearUnfinished(outFolder: string, nowMs: number): void {
  if (lstatSync(outFolder, { throwIfNoEntry: false }) === undefined) return;
  for (const name of readdirSync(outFolder).filter((each) => WORK_NAME.test(each))) {
    const folder = join(outFolder, name);
    // Another build may have done the same in the meantime.
    const stats = lstatSync(folder, { throwIfNoEntry: false });
    if (stats?.isDirectory() !== true || nowMs - stats.mtimeMs < HOUR_MS) continue;
    try {
      rmSync(folder, { recursive: true, force: true });
    } catch (error) {
      // What somebody else left in a shared folder may stay: it hinders no build.
      if (findFileError(error) === undefined) throw error;
    }
  }
}

/** Writes files into a folder, which need not be there yet. */
export function writeFiles({ files }: Pick<PackPlan, 'files'>, folder: string): void {
  const folders = new Set(files.map(({ path }) => dirname(join(folder, path))));
  for (const each of folders) mkdirSync(each, { recursive: true });
  for (const { path, content } of files) writeFileSync(join(folder, path), content);
}

/** What operating systems leave in a folder that somebody has looked at. */
export const LEFT_BY_SYSTEMS: ReadonlySet<string> = new Set(['.DS_Store', 'Thumbs.db', 'desktop.ini']);

function refuseSources(target: string, sources: readonly string[]): void {
  const real = findRealPath(target);
  for (const source of sources) {
    const realSource = findRealPath(source);
    if (!isWithin(real, realSource) && !isWithin(realSource, real)) continue;
    throw new ForeignFilesError(
      `The pack would go to \`${showPath(target)}\`, in place of, into or around your own folder \`${showPath(source)}\`; expected a place apart from it; choose another folder with \`--out\``,
    );
  }
}

/** A pack of ours may go; one that was changed only with `replace`; anything else never. */
function refuseForeign(target: string, there: Stats, replace: boolean): void {
  if (!there.isDirectory()) {
    const what = there.isSymbolicLink() ? 'a symbolic link' : 'a file';
    throw new ForeignFilesError(
      `\`${showPath(target)}\` is ${what}; expected a pack of this kit or a free name; move it away, or choose another folder with \`--out\``,
    );
  }
  const found = listFiles(target);
  if (found.length === 0) return;
  const manifest = readManifest(join(target, MANIFEST_PATH));
  if (manifest === undefined) {
    throw new ForeignFilesError(
      `\`${showPath(target)}\` is there already and is not a pack of this kit; expected a free name; move it away, or choose another folder with \`--out\``,
    );
  }
  if (!replace) refuseChanges(target, found, manifest);
}

/** Files of a folder and of those below it, in order, with forward slashes. */
function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => !entry.isDirectory() && !LEFT_BY_SYSTEMS.has(entry.name))
    .map((entry) => showPath(join(entry.parentPath, entry.name).slice(folder.length + 1)))
    .sort();
}

function refuseChanges(folder: string, found: readonly string[], manifest: Manifest): void {
  const digests = new Map(manifest.files.map((file) => [file.path, file.sha256]));
  for (const path of found) {
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
    `\`${showPath(join(folder, path))}\` ${what}; a new build would lose it; move it away, or build with \`--replace\``,
  );
}

/** The manifest of a pack; undefined when there is none of ours. */
export function readManifest(path: string): Manifest | undefined {
  try {
    const found: Partial<Manifest> = JSON.parse(readFileSync(path, 'utf8'));
    // Only the file list is used, and a wrong one ends in a refusal, never in a loss.
    const isOurs = found.format === 'lessontide-pack' && Array.isArray(found.files) && found.files.every(isListed);
    return isOurs ? (found as Manifest) : undefined;
  } catch {
    return undefined;
  }
}

function isListed(file: unknown): boolean {
  return typeof file === 'object' && file !== null && 'path' in file && 'sha256' in file;
}
