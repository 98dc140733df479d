import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { parse as parseYaml } from 'yaml';
import type { WeekFiles } from '../../src/lesson/resolve-week.ts';
import { makeWeek } from './build-week.ts';

/** Names of the folders in a folder. */
export function listFolders(folder: URL): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => (entry.isDirectory() ? entry.name : []));
}

/** The week of a case of the fixtures: its lessons, with the week that config.yaml tells or the usual one. */
export function readCase(folder: URL): WeekFiles {
  const names = readdirSync(folder).sort();
  const config = new URL('config.yaml', folder);
  const options: Record<string, unknown> = existsSync(config) ? parseYaml(readFileSync(config, 'utf8')) : {};
  const { school, days, week } = options;
  const lessons = names.filter((name) => /^input.*\.md$/.test(name));
  return {
    ...makeWeek(Object.fromEntries(lessons.map((name) => [name, readFileSync(new URL(name, folder), 'utf8')])), {
      ...(typeof school === 'string' ? { school } : {}),
      ...(typeof week === 'string' ? { week } : {}),
      ...(Array.isArray(days) ? { days } : {}),
    }),
    pictures: readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .map((name) => name.replaceAll('\\', '/'))
      .filter((name) => name.endsWith('.png'))
      .sort(),
  };
}
