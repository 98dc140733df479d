import { execFileSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build as bundle } from 'vite';
import { openLibrary } from '../../src/content/open-library.ts';
import type { Calendar } from '../../src/content/types.ts';
import { readContent } from '../../src/node/read-content.ts';
import { writeNonsenseWeek } from './nonsense-content.ts';

const ROOT = join(import.meta.dirname, '../..');

/** A page of a built pack. */
export interface BuiltPage {
  /** From the pack's root, with forward slashes. */
  readonly path: string;
  readonly url: string;
  readonly html: string;
}

/** A pack in a folder of its own, and what it was made from. */
export interface BuiltPack {
  readonly id: string;
  /** Ends with a slash. */
  readonly url: string;
  /** All files, from the pack's root. */
  readonly files: ReadonlySet<string>;
  readonly pages: readonly BuiltPage[];
  readonly calendar: Calendar;
  /** Names of the calendar's nights, groups and months. */
  readonly names: readonly string[];
  /** All that people wrote for this pack by hand: lessons, calendar, questions, gestures, school. */
  readonly authorsText: string;
}

/** What the tests open. */
export interface BuiltPacks {
  /** Holds all of it; to be removed at the end. */
  readonly folder: string;
  /** The demonstration weeks. */
  readonly packs: readonly BuiltPack[];
  /**
   * The French week for a school that speaks English: its pages speak another language than its names, so that a name
   * without a tag shows.
   */
  readonly mixed: BuiltPack;
}

/** Bundles the command from today's source and builds the packs with it, in a folder outside of the project. */
export async function buildPacks(): Promise<BuiltPacks> {
  const folder = await makeKit();
  const content = join(ROOT, 'content');
  const mixedContent = join(folder, 'mixed-content');
  cpSync(content, mixedContent, { recursive: true });
  const school = join(mixedContent, 'schools/ormevire.yaml');
  writeFileSync(school, readFileSync(school, 'utf8').replace('\nlanguage: fr\n', '\nlanguage: en\n'));
  return {
    folder,
    packs: [
      await buildPack({ folder, week: 'round-moon', school: 'saltgrass-point', content, out: join(folder, 'out') }),
      await buildPack({ folder, week: 'vers-la-nuit-noire', school: 'ormevire', content, out: join(folder, 'out') }),
    ],
    mixed: await buildPack({
      folder,
      week: 'vers-la-nuit-noire',
      school: 'ormevire',
      content: mixedContent,
      out: join(folder, 'mixed-out'),
    }),
  };
}

/** The first demonstration week in words that run from right to left: nonsense, in a folder to be removed at the end. */
export async function buildNonsensePack(): Promise<{ readonly folder: string; readonly pack: BuiltPack }> {
  const folder = await makeKit();
  writeNonsenseWeek(ROOT, folder);
  const order = { folder, week: 'round-moon', school: 'saltgrass-point', out: join(folder, 'out') };
  const pack = await buildPack({ ...order, content: join(folder, 'content'), lessons: join(folder, 'lessons') });
  return { folder, pack };
}

/** A new folder outside of the project with the command in it, bundled from today's source. */
async function makeKit(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'lessontide-browser-'));
  // The command finds the library that cuts fonts as an installed one does: in node_modules above it.
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'), 'junction');
  await bundle({ root: ROOT, mode: 'production', logLevel: 'silent', build: { outDir: join(folder, 'kit') } });
  return folder;
}

interface Order {
  readonly folder: string;
  readonly week: string;
  readonly school: string;
  readonly content: string;
  /** Holds the week; absent: the project's. */
  readonly lessons?: string;
  readonly out: string;
}

async function buildPack({ folder, week, school, content, out, ...order }: Order): Promise<BuiltPack> {
  const lessons = join(order.lessons ?? join(ROOT, 'lessons'), week);
  const command = [join(folder, 'kit/lessontide.cjs'), 'build', lessons, '--content', content, '--out', out];
  // A failure carries what the command told.
  execFileSync(process.execPath, command, { cwd: folder, stdio: 'pipe' });
  const packFolder = join(out, week);
  const files = listFiles(packFolder);
  const library = readContent(content);
  const calendar = openLibrary(library).openSchool(school)?.value?.calendar;
  if (calendar === undefined) throw new Error(`There is no school ${school}.`);
  return {
    id: week,
    url: `${pathToFileURL(packFolder).href}/`,
    files: new Set(files),
    pages: files.filter((path) => path.endsWith('.html')).map((path) => readPage(packFolder, path)),
    calendar,
    names: listNames(calendar),
    authorsText: [
      ...listFiles(lessons).map((path) => readFileSync(join(lessons, path), 'utf8')),
      ...[...library.calendars, ...library.questions, ...library.gestures, ...library.schools].map(({ text }) => text),
    ].join('\n'),
  };
}

function listFiles(folder: string): string[] {
  return readdirSync(folder, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath, entry.name)
        .slice(folder.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort();
}

function readPage(folder: string, path: string): BuiltPage {
  const file = join(folder, path);
  return { path, url: pathToFileURL(file).href, html: readFileSync(file, 'utf8') };
}

/** The longest first, so that a name which holds another is found as itself. */
function listNames({ groups, months, thirteenthMonth }: Calendar): string[] {
  const names = [
    ...groups.flatMap((group) => [group.name, ...group.nights.map((night) => night.name)]),
    ...months.map((month) => month.name),
    ...(thirteenthMonth === undefined ? [] : [thirteenthMonth.name]),
  ];
  return [...new Set(names)].sort((a, b) => b.length - a.length);
}
