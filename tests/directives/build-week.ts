import { readdirSync, readFileSync } from 'node:fs';
import { createAlmanac } from '../../src/calendar/almanac.ts';
import type { Almanac } from '../../src/calendar/almanac-types.ts';
import type { Diagnostic } from '../../src/content/diagnostic.ts';
import { type ContentAssets, NO_ASSETS } from '../../src/content/media/content-assets.ts';
import { type OpenedSchool, openLibrary } from '../../src/content/open-library.ts';
import type { SourceFile } from '../../src/content/types.ts';
import type { ResolvedWeek } from '../../src/lesson/model.ts';
import { resolveWeek, type WeekFiles, type WeekSetting } from '../../src/lesson/resolve-week.ts';
import { sha256 } from '../../src/node/sha256.ts';
import type { PackPlan } from '../../src/pack/pack-plan.ts';
import { planFiles, planPack } from '../../src/pack/plan-pack.ts';

/** The fixed content of the fixtures: an English school on the south coast, a French one, and one at the date line. */
export const FIXED_CONTENT = new URL('../fixtures/directives/content/', import.meta.url);
export const DEMO_CONTENT = new URL('../../content/', import.meta.url);

/** All YAML files of a folder, in order of name; `path` begins with the folder's own name. */
function readYaml(folder: URL, kind: string, change = (text: string) => text): SourceFile[] {
  return readdirSync(new URL(`${kind}/`, folder))
    .filter((name) => name.endsWith('.yaml'))
    .sort()
    .map((name) => ({
      path: `content/${kind}/${name}`,
      text: change(readFileSync(new URL(`${kind}/${name}`, folder), 'utf8')),
    }));
}

/** What a test may set of the content; the rest is as its files have it. */
export interface ContentChanges {
  readonly changeCalendars?: (text: string) => string;
  readonly changeGestures?: (text: string) => string;
  readonly assets?: ContentAssets;
}

/**
 * A new setting over a content folder: nothing in it was parsed or computed before. Labels are always the kit's own.
 * `changeQuestions` is applied to the text of the questions files.
 */
export function openContent(
  folder: URL = FIXED_CONTENT,
  changeQuestions?: (text: string) => string,
  { changeCalendars, changeGestures, assets = NO_ASSETS }: ContentChanges = {},
): WeekSetting {
  const library = openLibrary({
    assets,
    calendars: readYaml(folder, 'calendars', changeCalendars),
    schools: readYaml(folder, 'schools'),
    gestures: readYaml(folder, 'gestures', changeGestures),
    questions: readYaml(folder, 'questions', changeQuestions),
    labels: readYaml(DEMO_CONTENT, 'labels'),
  });
  const almanacs = new Map<OpenedSchool['school'], Almanac>();
  return {
    library,
    almanacFor({ school, calendar }) {
      const almanac = almanacs.get(school) ?? createAlmanac(calendar, school.place);
      almanacs.set(school, almanac);
      return almanac;
    },
  };
}

/** What became of a week; `plan` is absent after an error. */
export interface BuiltWeek {
  readonly diagnostics: readonly Diagnostic[];
  readonly week?: ResolvedWeek;
  readonly plan?: PackPlan;
}

/** Resolves and plans a week. Every picture holds its own path, so that each is told from the others. */
export function buildWeek(files: WeekFiles, setting: WeekSetting): BuiltWeek {
  const { week, diagnostics } = resolveWeek(files, setting);
  if (week === undefined) return { diagnostics };
  const pictures = new Map(files.pictures.map((path) => [path, new TextEncoder().encode(path)]));
  return { diagnostics, week, plan: planPack(week, planFiles(week, pictures, sha256), sha256) };
}

/** The text of a week.yaml for one or more days, and lessons with paths beside it. */
export function makeWeek(
  lessons: Readonly<Record<string, string>>,
  options: { readonly week?: string; readonly school?: string; readonly days?: readonly string[] } = {},
): WeekFiles {
  const days = options.days ?? ['wednesday'];
  const text =
    options.week ??
    `title: A test week\nbegins: 2026-07-27\ndays: [${days.join(', ')}]\nschool: ${options.school ?? 'saltgrass-point'}\nfor: Years 3-4\n`;
  return {
    week: { path: 'lessons/test-week/week.yaml', text },
    lessons: Object.entries(lessons).map(([name, lesson]) => ({ path: `lessons/test-week/${name}`, text: lesson })),
    pictures: [],
  };
}

/** A lesson file: front matter, then the body. Other lines of front matter may be given; `minutes` is 10. */
export function writeLesson(body: string, head: { readonly day?: string; readonly more?: string } = {}): string {
  const { day = 'wednesday', more = '' } = head;
  return `---\ntitle: A lesson\nday: ${day}\nminutes: 10\nintentions: [We learn]\nsuccess: [I can]\nmaterials: []\n${more}---\n\n${body}\n`;
}

/** A week of a folder as its files stand: week.yaml and Markdown files. */
export function readWeekFolder(folder: URL, name: string): WeekFiles {
  const read = (file: string): SourceFile => ({
    path: `lessons/${name}/${file}`,
    text: readFileSync(new URL(file, folder), 'utf8'),
  });
  const names = readdirSync(folder).sort();
  return {
    week: read('week.yaml'),
    lessons: names.filter((each) => each.endsWith('.md')).map(read),
    pictures: names.filter((each) => each.endsWith('.png')),
  };
}

/** The text files of a plan by path. */
export function listTexts({ files }: PackPlan): Map<string, string> {
  return new Map(files.flatMap(({ path, content }) => (typeof content === 'string' ? [[path, content]] : [])));
}

/** A plan in short: the digest of each file by its path, in order. A difference in sound need not be listed byte by byte. */
export function digestPlan(
  plan: PackPlan | undefined,
): readonly (readonly [path: string, digest: string])[] | undefined {
  return plan?.files.map(({ path, content }) => [path, sha256.hex(content)]);
}

/** A finding as fixtures list it: `line:column severity rule message`; another file than `usual` is named before. */
export function printDiagnostic({ place, severity, rule, message, related }: Diagnostic, usual: string): string {
  const file = place.file === usual ? '' : `${place.file.split('/').at(-1)}:`;
  const also = related === undefined ? '' : ` (see ${related.line}:${related.column})`;
  return `${file}${place.line}:${place.column} ${severity} ${rule} ${message}${also}`;
}
