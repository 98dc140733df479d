import { readdirSync, readFileSync } from 'node:fs';
import { basename, extname, join } from 'node:path';
import type { LibraryFiles } from '../content/library.ts';
import type { SourceFile } from '../content/types.ts';
import type { WeekFiles } from '../lesson/resolve-week.ts';

/** A folder or file that was asked for is not there; the message says what was expected and where. */
export class MissingFolderError extends Error {
  override readonly name = 'MissingFolderError';
}

/** Reads every YAML file of a content folder. A folder for a kind that is not there counts as empty. */
export function readContent(folder: string): LibraryFiles {
  if (findEntries(folder) === undefined) {
    throw new MissingFolderError(
      `There is no folder \`${folder}\`; expected a content folder with schools/, calendars/ and gestures/; name one with \`--content\``,
    );
  }
  const readKind = (kind: string) => readYamlFiles(join(folder, kind));
  return {
    calendars: readKind('calendars'),
    schools: readKind('schools'),
    gestures: readKind('gestures'),
    questions: readKind('questions'),
    labels: readKind('labels'),
  };
}

/** File name endings of pictures that every browser shows. */
const PICTURES: ReadonlySet<string> = new Set(['.png', '.jpg', '.jpeg', '.svg', '.gif', '.webp']);

/** A week's folder as read. */
export interface ReadWeek extends WeekFiles {
  readonly folder: string;
}

/**
 * Reads a week's folder: week.yaml, its Markdown files, and the names of its pictures.
 * Markdown files whose name begins with a capital README are notes to people, not lessons.
 */
export function readWeek(folder: string): ReadWeek {
  const entries = findEntries(folder) ?? [];
  if (!entries.includes('week.yaml')) {
    throw new MissingFolderError(
      `There is no \`week.yaml\` in \`${showPath(folder)}\`; expected the folder of a week; see the weeks with \`lessontide check\``,
    );
  }
  const lessons = entries.filter((name) => extname(name) === '.md' && !name.startsWith('README'));
  return {
    folder,
    week: readSource(join(folder, 'week.yaml')),
    lessons: lessons.map((name) => readSource(join(folder, name))),
    pictures: entries
      .filter((name) => PICTURES.has(extname(name).toLowerCase()))
      .map((name) => name.replaceAll('\\', '/')),
  };
}

/** Folders of weeks directly below a folder of lessons, by name. */
export function listWeeks(lessonsFolder: string): string[] {
  const entries = findEntries(lessonsFolder) ?? [];
  return entries
    .filter((name) => basename(name) === 'week.yaml' && name.split(/[\\/]/).length === 2)
    .map((name) => name.split(/[\\/]/)[0] ?? '');
}

/** Names of all files below a folder, in code-point order; undefined when the folder is not there. */
function findEntries(folder: string): string[] | undefined {
  try {
    return readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  } catch (error) {
    if (isAbsence(error)) return undefined;
    throw error;
  }
}

function isAbsence(error: unknown): boolean {
  const code = error instanceof Error && 'code' in error ? error.code : undefined;
  return code === 'ENOENT' || code === 'ENOTDIR';
}

function readYamlFiles(folder: string): SourceFile[] {
  const names = (findEntries(folder) ?? []).filter((name) => extname(name) === '.yaml');
  return names.map((name) => readSource(join(folder, name)));
}

function readSource(path: string): SourceFile {
  return { path: showPath(path), text: readFileSync(path, 'utf8') };
}

/** A path as messages show it: forward slashes on every system. */
export function showPath(path: string): string {
  return path.replaceAll('\\', '/');
}
