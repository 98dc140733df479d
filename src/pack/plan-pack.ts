import { LEARNERS_FOLDER } from '../directives/page-names.ts';
import type { ResolvedWeek } from '../lesson/model.ts';
import { planManifest } from './manifest.ts';
import type { PackFile, PackPlan, Sha256 } from './pack-plan.ts';
import { planPages } from './plan-pages.ts';

/**
 * Plans all files of a week's pack: pages, pictures and, last, the manifest with a digest of every other file.
 * @param pictures Bytes of the week's picture files, by path from its folder; every picture the lessons show is there.
 */
export function planPack(week: ResolvedWeek, pictures: ReadonlyMap<string, Uint8Array>, sha256: Sha256): PackPlan {
  const files = [...planPages(week, sha256.base64), ...planPictures(week, pictures)];
  return { id: week.plan.id, files: [...files, planManifest(week, files, sha256)] };
}

/** The teacher's pages get every picture, the learners' folder only those that a learner's page shows. */
function planPictures(week: ResolvedWeek, pictures: ReadonlyMap<string, Uint8Array>): PackFile[] {
  const files = new Map<string, Uint8Array>();
  for (const { path, name, forLearners } of week.lessons.flatMap((lesson) => lesson.pictures)) {
    const bytes = pictures.get(path);
    if (bytes === undefined) throw new Error(`The picture ${path} was not read.`);
    files.set(`images/${name}`, bytes);
    if (forLearners) files.set(`${LEARNERS_FOLDER}/images/${name}`, bytes);
  }
  return [...files].map(([path, content]) => ({ path, content })).sort((a, b) => (a.path < b.path ? -1 : 1));
}
