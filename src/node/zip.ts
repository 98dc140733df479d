import { type Zippable, zipSync } from 'fflate';
import type { Zip } from '../pack/pack-plan.ts';

/** What fflate calls its usual strength; a fixed one, so that the same files give the same bytes. */
const LEVEL = 6;

/** ZIP archives by fflate: the same files give the same bytes, on any day and in any zone. */
export const zip: Zip = (files) => {
  // An archive's clock has no zone, and begins in 1980: noon of its first day by the local clock is that in any zone.
  const mtime = new Date(1980, 0, 1, 12);
  const entries: Zippable = {};
  for (const { path, content } of files) {
    const bytes = typeof content === 'string' ? new TextEncoder().encode(content) : content;
    entries[path] = [bytes, { level: LEVEL, mtime }];
  }
  return zipSync(entries);
};
