import { join } from 'node:path';
import type { UsedPicture } from '../lesson/model.ts';
import { readBytes } from '../node/read-source.ts';

/** Bytes of the picture files that lessons show, by their paths from the week's folder. */
export function readPictures(
  folder: string,
  lessons: readonly { readonly pictures: readonly UsedPicture[] }[],
  isWanted: (picture: UsedPicture) => boolean = () => true,
): Map<string, Uint8Array> {
  const wanted = lessons.flatMap(({ pictures }) => pictures.filter(isWanted));
  const paths = new Set(wanted.map(({ path }) => path));
  return new Map([...paths].map((path) => [path, readBytes(join(folder, path))]));
}
