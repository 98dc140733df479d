import type { ResolvedWeek } from '../lesson/model.ts';
import { MANIFEST_SCHEMA, planManifest } from './manifest.ts';
import type { PackFile, PackPlan, Sha256, Zip } from './pack-plan.ts';
import { planCalendarFile } from './plan-calendar.ts';
import { planMediaFiles } from './plan-media.ts';
import { planPages } from './plan-pages.ts';
import { planQtiPackages } from './qti/plan-qti.ts';

/**
 * Plans the files of a week's pack that come from its lessons and content: pages, the nights as events, pictures, sounds.
 * @param pictures Bytes of the week's picture files, by path from its folder; every picture the lessons show is there.
 * @param zip Given, the teacher's part holds each quiz for an assessment tool as well.
 */
export function planFiles(
  week: ResolvedWeek,
  pictures: ReadonlyMap<string, Uint8Array>,
  sha256: Sha256,
  zip?: Zip,
): PackFile[] {
  const quizzes = zip === undefined ? [] : planQtiPackages(week, pictures, { sha256, zip });
  return [...planPages(week, sha256.base64), planCalendarFile(week), ...planMediaFiles(week, pictures), ...quizzes];
}

/** The whole pack: its files and, last, the manifest with a digest of every other file, after what describes it. */
export function planPack(week: ResolvedWeek, files: readonly PackFile[], sha256: Sha256): PackPlan {
  const described = [...files, MANIFEST_SCHEMA];
  return { id: week.plan.id, files: [...described, planManifest(week, described, sha256)] };
}
