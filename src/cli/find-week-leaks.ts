import { dirname, join } from 'node:path';
import type { Diagnostic } from '../content/diagnostic.ts';
import type { ResolvedWeek } from '../lesson/model.ts';
import { type BuiltFile, readLearnersPart } from '../node/read-built-pack.ts';
import type { ReadWeek } from '../node/read-content.ts';
import { sha256 } from '../node/sha256.ts';
import { showPath } from '../node/show-path.ts';
import { unpack } from '../node/unpack.ts';
import { createLeakFinder, type LeakFinder } from '../pack/leaks/find-leaks.ts';
import type { PackFile } from '../pack/pack-plan.ts';
import { planLearnersMedia } from '../pack/plan-media.ts';
import { planLearnersPages } from '../pack/plan-pages.ts';
import { readPictures } from './read-pictures.ts';

/** Searches the files that are about to be written for what learners must not get. */
export function findPlannedLeaks(week: ResolvedWeek, read: ReadWeek, files: readonly PackFile[]): Diagnostic[] {
  return searchPlanned(openFinder(week, read), week, files);
}

/**
 * Plans what learners would get of a week and searches it, and the learners' part of the week's pack in the folder for
 * packs, where there is one. Files that are as they would be built now are searched once.
 */
export function findWeekLeaks(week: ResolvedWeek, read: ReadWeek, outFolder: string): Diagnostic[] {
  const finder = openFinder(week, read);
  const pictures = readPictures(read.folder, week.lessons, ({ forLearners }) => forLearners);
  const planned = [...planLearnersPages(week, sha256.base64), ...planLearnersMedia(week, pictures)];
  const packFolder = join(outFolder, week.plan.id);
  const byPath = new Map(planned.map(({ path, content }) => [path, content]));
  const files = readLearnersPart(packFolder).filter((file) => !isSame(file, byPath.get(file.path)));
  return [
    ...searchPlanned(finder, week, planned),
    ...finder.find({ origin: 'built', files, showPath: (path) => showPath(join(packFolder, path)) }),
  ];
}

function openFinder(week: ResolvedWeek, { week: file, lessons }: ReadWeek): LeakFinder {
  return createLeakFinder(week, { sources: lessons, weekFolder: dirname(file.path), unpack });
}

/** A planned file is called by the pack's name: it lies nowhere yet. */
function searchPlanned(finder: LeakFinder, week: ResolvedWeek, files: readonly PackFile[]): Diagnostic[] {
  return finder.find({ origin: 'planned', files, showPath: (path) => `${week.plan.id}/${path}` });
}

function isSame({ content }: BuiltFile, planned: PackFile['content'] | undefined): boolean {
  return planned !== undefined && Buffer.from(content).equals(Buffer.from(planned));
}
