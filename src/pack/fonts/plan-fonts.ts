import { LEARNERS_FOLDER } from '../../directives/page-names.ts';
import type { PackFile } from '../pack-plan.ts';
import { FONT_FACES, FONTS_FOLDER, type FontFace, type FontFile, nameFontFile } from './font-faces.ts';
import { FONT_RANGES, type FontRange, listCharactersOf } from './font-ranges.ts';

/** A font file with the characters that it has to hold. */
export interface FontNeed extends FontFile {
  /** Path in the pack. */
  readonly path: string;
  /** Each once, in order of code points; not empty. */
  readonly characters: string;
}

/** Makes font files smaller: handed in, since the library that does it is no part of the core. */
export interface FontCutter {
  /** Bytes of a WOFF file that holds glyphs for these characters, as far as the face has any. */
  cut(need: FontNeed): Promise<Uint8Array>;
  /** The licence, which goes with every copy of the fonts. */
  readonly licence: string;
}

/**
 * The font files of a pack, with what each has to hold. The learners' files are made from the learners' pages alone:
 * a letter that only an answer has would tell.
 */
export function listFontNeeds(pages: readonly PackFile[]): FontNeed[] {
  const isLearners = ({ path }: PackFile) => path.startsWith(`${LEARNERS_FOLDER}/`);
  return [
    ...listNeeds(
      pages.filter((page) => !isLearners(page)),
      '',
    ),
    ...listNeeds(pages.filter(isLearners), `${LEARNERS_FOLDER}/`),
  ];
}

function listNeeds(pages: readonly PackFile[], folder: string): FontNeed[] {
  const text = pages.map(({ content }) => (typeof content === 'string' ? content : '')).join('');
  return listNamedFiles(text).flatMap((file) => {
    const characters = listCharactersOf(text, file.range);
    return characters === '' ? [] : [{ ...file, path: `${folder}${FONTS_FOLDER}/${nameFontFile(file)}`, characters }];
  });
}

/** The files that the pages' own styles ask for. */
function listNamedFiles(text: string): FontFile[] {
  const faces = Object.keys(FONT_FACES) as FontFace[];
  const ranges = Object.keys(FONT_RANGES) as FontRange[];
  return faces
    .flatMap((face) => ranges.map((range) => ({ face, range })))
    .filter((file) => text.includes(`${FONTS_FOLDER}/${nameFontFile(file)}`));
}

/** Plans the font files and, beside them, their licence. */
export async function planFonts(pages: readonly PackFile[], cutter: FontCutter): Promise<PackFile[]> {
  const files: PackFile[] = [];
  const cuts = new Map<string, Uint8Array>();
  for (const need of listFontNeeds(pages)) {
    const key = [need.face, need.range, need.characters].join(' ');
    const content = cuts.get(key) ?? (await cutter.cut(need));
    cuts.set(key, content);
    files.push({ path: need.path, content });
  }
  const folders = [...new Set(files.map(({ path }) => path.slice(0, path.lastIndexOf('/'))))];
  return [...files, ...folders.map((folder) => ({ path: `${folder}/OFL.txt`, content: cutter.licence }))];
}
