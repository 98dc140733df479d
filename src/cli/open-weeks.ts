import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { createAlmanac } from '../calendar/almanac.ts';
import type { Almanac } from '../calendar/almanac-types.ts';
import { findNearMiss } from '../content/near-miss.ts';
import { type OpenedSchool, openLibrary } from '../content/open-library.ts';
import type { WeekSetting } from '../lesson/resolve-week.ts';
import { listWeeks, readContent } from '../node/read-content.ts';
import type { Arguments } from './arguments.ts';
import { UsageError } from './usage-error.ts';

export const CONTENT_FOLDER = 'content';
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

function requireKnown(kind: 'school' | 'calendar', id: string | undefined, known: readonly string[]): void {
  if (id === undefined || known.includes(id)) return;
  const near = findNearMiss(id, known);
  const advice = near === undefined ? '' : `; did you mean \`${near}\`?`;
  throw new UsageError(
    `\`${id}\` is not a ${kind}; expected one of ${known.join(', ') || 'none: there are no files'}${advice}`,
  );
}

/** Folders of the named weeks; each name is a folder's path, or the name of a folder in lessons/. */
export function findWeekFolders(names: readonly string[]): string[] {
  return [...new Set(names.map(findWeekFolder))];
}

/** Folders of all weeks in lessons/. */
export function listWeekFolders(): string[] {
  return listWeeks(LESSONS_FOLDER).map((name) => join(LESSONS_FOLDER, name));
}

function findWeekFolder(name: string): string {
  for (const folder of [join(LESSONS_FOLDER, name), name]) {
    if (existsSync(join(folder, 'week.yaml'))) return folder;
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
