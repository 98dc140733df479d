import { existsSync } from 'node:fs';
import { basename, join, normalize, resolve, sep } from 'node:path';
import { createAlmanac } from '../calendar/almanac.ts';
import type { Almanac } from '../calendar/almanac-types.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { type OpenedSchool, openLibrary } from '../content/open-library.ts';
import type { WeekSetting } from '../lesson/resolve-week.ts';
import { listWeeks, readContent } from '../node/read-content.ts';
import { findRealPath } from '../node/real-path.ts';
import { showPath } from '../node/show-path.ts';
import type { Arguments } from './arguments.ts';
import { UsageError } from './usage-error.ts';

export const CONTENT_FOLDER = 'content';
export const OUTPUT_FOLDER = 'output';
const LESSONS_FOLDER = 'lessons';

/** Opens the content that a command works with, and holds its options against it. */
export function openSetting({ options }: Arguments): WeekSetting {
  const library = openLibrary(readContent(options.content ?? CONTENT_FOLDER));
  requireKnown('school', options.school, library.schools.ids);
  requireKnown('calendar', options.calendar, library.calendarIds);
  const almanacs = new Map<string, Almanac>();
  return {
    library,
    almanacFor({ school, calendar }: OpenedSchool) {
      const key = JSON.stringify([school.id, calendar.id]);
      const almanac = almanacs.get(key) ?? createAlmanac(calendar, school.place);
      almanacs.set(key, almanac);
      return almanac;
    },
    ...(options.school === undefined ? {} : { schoolId: options.school }),
    ...(options.calendar === undefined ? {} : { calendarId: options.calendar }),
  };
}

/** @throws UsageError for the id of a school or calendar that is not there. */
export function requireKnown(kind: 'school' | 'calendar', id: string | undefined, known: readonly string[]): void {
  if (id === undefined || known.includes(id)) return;
  const near = findNearMiss(id, known);
  const advice = near === undefined ? '' : `; did you mean \`${near}\`?`;
  throw new UsageError(
    `\`${id}\` is not a ${kind}; expected one of ${known.join(', ') || 'none: there are no files'}${advice}`,
  );
}

/**
 * Folders of the named weeks; each name is a folder's path, or the name of a folder in lessons/. A folder that is named
 * in two ways is there once.
 */
export function findWeekFolders(names: readonly string[]): string[] {
  const byRealPath = new Map<string, string>();
  for (const folder of names.map(findWeekFolder)) {
    const real = findRealPath(folder);
    if (!byRealPath.has(real)) byRealPath.set(real, folder);
  }
  return [...byRealPath.values()];
}

/**
 * Two folders of one name would make one pack, and the second would take the place of the first.
 * @throws UsageError when there are two; names that differ only in case are the same on some disks.
 */
export function refuseSameNames(folders: readonly string[]): void {
  const first = new Map<string, string>();
  for (const folder of folders) {
    const name = basename(folder).normalize('NFC').toLowerCase();
    const other = first.get(name);
    if (other !== undefined) {
      throw new UsageError(
        `\`${showPath(folder)}\` has the same name as \`${showPath(other)}\` and would make the same pack; rename one, or build them one at a time, each with its own \`--out\``,
      );
    }
    first.set(name, folder);
  }
}

/** Folders of all weeks in lessons/. */
export function listWeekFolders(): string[] {
  return listWeeks(LESSONS_FOLDER).map((name) => join(LESSONS_FOLDER, name));
}

function findWeekFolder(name: string): string {
  for (const folder of [join(LESSONS_FOLDER, name), name]) {
    if (existsSync(join(folder, 'week.yaml'))) return tidyPath(folder);
  }
  const weeks = listWeeks(LESSONS_FOLDER);
  const near = findNearMiss(name, weeks);
  const advice =
    near === undefined
      ? `the weeks in ${LESSONS_FOLDER}/ are: ${weeks.join(', ') || 'none'}`
      : `did you mean \`${near}\`?`;
  throw new UsageError(
    `\`${name}\` is not a week: no \`week.yaml\` in \`${LESSONS_FOLDER}/${name}\` or \`${name}\`; ${advice}`,
  );
}

/** `./lessons/a//` as `lessons/a`. A path that does not end in a name, such as `.`, as the whole path: packs are called by it. */
function tidyPath(folder: string): string {
  const plain = normalize(folder);
  const tidy = plain.length > 1 && plain.endsWith(sep) ? plain.slice(0, -1) : plain;
  return /^\.{1,2}$/.test(basename(tidy)) ? resolve(tidy) : tidy;
}
