import { existsSync, readdirSync } from 'node:fs';
import { extname, join } from 'node:path';
import type { LibraryFiles } from '../content/library.ts';
import type { SourceFile } from '../content/types.ts';
import type { WeekFiles } from '../lesson/resolve-week.ts';
import { createAssets } from './content-assets.ts';
import { FileError } from './file-error.ts';
import { findFiles, isFolder, isHidden } from './find-files.ts';
import { readSource } from './read-source.ts';
import { showPath } from './show-path.ts';

/**
 * Reads every YAML file of a content folder. A folder for a kind that is not there counts as empty. Pictures and sounds
 * are read when a YAML file that is looked at names them.
 * @throws FileError when the folder is not there; what the system refuses goes through as it is.
 */
export function readContent(folder: string): LibraryFiles {
  if (!isFolder(folder)) {
    throw new FileError(
      `There is no folder \`${showPath(folder)}\`; expected a content folder with schools/, calendars/ and gestures/; name one with \`--content\``,
    );
  }
  const readKind = (kind: string) => readYamlFiles(join(folder, kind));
  return {
    calendars: readKind('calendars'),
    schools: readKind('schools'),
    gestures: readKind('gestures'),
    questions: readKind('questions'),
    labels: readKind('labels'),
    assets: createAssets(folder),
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
 * @throws FileError when there is no week.yaml; what the system refuses goes through as it is.
 */
export function readWeek(folder: string): ReadWeek {
  const files = findFiles(folder);
  if (!files.includes('week.yaml')) {
    throw new FileError(
      `There is no file \`week.yaml\` in \`${showPath(folder)}\`; expected the folder of a week; see the weeks with \`lessontide check\``,
    );
  }
  const lessons = files.filter((name) => extname(name) === '.md' && !name.startsWith('README'));
  return {
    folder,
    week: readSource(join(folder, 'week.yaml')),
    lessons: lessons.map((name) => readSource(join(folder, name))),
    pictures: files.filter((name) => PICTURES.has(extname(name).toLowerCase())),
  };
}

/** Folders of weeks directly below a folder of lessons, by name. */
export function listWeeks(lessonsFolder: string): string[] {
  const names = isFolder(lessonsFolder) ? readdirSync(lessonsFolder) : [];
  return names.filter((name) => !isHidden(name) && existsSync(join(lessonsFolder, name, 'week.yaml'))).sort();
}

function readYamlFiles(folder: string): SourceFile[] {
  const names = findFiles(folder).filter((name) => extname(name) === '.yaml');
  return names.map((name) => readSource(join(folder, name)));
}
