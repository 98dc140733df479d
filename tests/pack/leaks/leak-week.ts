import type { Diagnostic } from '../../../src/content/diagnostic.ts';
import type { ResolvedWeek } from '../../../src/lesson/model.ts';
import { resolveWeek, type WeekFiles, type WeekSetting } from '../../../src/lesson/resolve-week.ts';
import { sha256 } from '../../../src/node/sha256.ts';
import { unpack } from '../../../src/node/unpack.ts';
import { createLeakFinder, type SearchedFile } from '../../../src/pack/leaks/find-leaks.ts';
import type { Origin } from '../../../src/pack/leaks/say-leak.ts';
import { planLearnersPages } from '../../../src/pack/plan-pages.ts';
import { makeWeek, writeLesson } from '../../directives/build-week.ts';

/** A week with the files that learners get, and the search of it. */
export interface LeakWeek {
  readonly week: ResolvedWeek;
  readonly files: readonly SearchedFile[];
  /** Findings about the files, or about others in their place. */
  find(files?: readonly SearchedFile[], origin?: Origin): Diagnostic[];
}

/** Resolves a week and plans its pages for learners. Throws where there is a mistake in it. */
export function openLeakWeek(files: WeekFiles, setting: WeekSetting): LeakWeek {
  const { week, diagnostics } = resolveWeek(files, setting);
  if (week === undefined) throw new Error(diagnostics.map(({ message }) => message).join('\n'));
  const weekFolder = `lessons/${week.plan.id}`;
  const finder = createLeakFinder(week, { sources: files.lessons, weekFolder, unpack });
  const planned = planLearnersPages(week, sha256.base64);
  return {
    week,
    files: planned,
    find: (searched = planned, origin = 'planned') =>
      finder.find({ origin, files: searched, showPath: (path) => `pack/${path}` }),
  };
}

/** The same of one lesson for a Wednesday. @param pictures Paths from the week's folder. */
export function openLeakLesson(body: string, setting: WeekSetting, pictures: readonly string[] = []): LeakWeek {
  return openLeakWeek({ ...makeWeek({ 'input.md': writeLesson(body) }), pictures }, setting);
}

/** The path of the page whose name holds some words, such as `quiz`. There is one. */
export function pathOf({ files }: LeakWeek, words: string): string {
  const [file, second] = files.filter(({ path }) => path.includes(words));
  if (file === undefined || second !== undefined) throw new Error(`Not one page is called ${words}.`);
  return file.path;
}

/** Puts one text in the place of another in a page; the other must be there. */
export function plant(files: readonly SearchedFile[], path: string, from: string | RegExp, to: string): SearchedFile[] {
  const file = files.find((each) => each.path === path);
  if (file === undefined) throw new Error(`There is no ${path}.`);
  const text = String(file.content);
  const changed = text.replace(from, () => to);
  if (changed === text) throw new Error(`${path} does not hold ${from}.`);
  return files.map((each) => (each === file ? { path, content: changed } : each));
}
