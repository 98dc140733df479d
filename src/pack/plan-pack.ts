import type { ResolvedWeek } from '../lesson/model.ts';
import { planManifest } from './manifest.ts';
import type { PackPlan, Sha256, Zip } from './pack-plan.ts';
import { planMediaFiles } from './plan-media.ts';
import { planPages } from './plan-pages.ts';
import { planQtiPackages } from './qti/plan-qti.ts';

/**
 * Plans all files of a week's pack: pages, pictures, sounds and, last, the manifest with a digest of every other file.
 * @param pictures Bytes of the week's picture files, by path from its folder; every picture the lessons show is there.
 * @param zip Given, the teacher's part holds each quiz for an assessment tool as well.
 */
export function planPack(
  week: ResolvedWeek,
  pictures: ReadonlyMap<string, Uint8Array>,
  sha256: Sha256,
  zip?: Zip,
): PackPlan {
  const quizzes = zip === undefined ? [] : planQtiPackages(week, pictures, { sha256, zip });
  const files = [...planPages(week, sha256.base64), ...planMediaFiles(week, pictures), ...quizzes];
  return { id: week.plan.id, files: [...files, planManifest(week, files, sha256)] };
}
