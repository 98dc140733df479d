import type { ElementContent } from 'hast';
import { FONT_RANGES, type FontRange, listFontRanges } from './font-ranges.ts';

/** The faces that pages are set in: bold italic is slanted from bold by the browser, it is too rare for a file. */
export const FONT_FACES = {
  regular: { weight: 400, style: 'normal' },
  bold: { weight: 700, style: 'normal' },
  italic: { weight: 400, style: 'italic' },
} as const;

export type FontFace = keyof typeof FONT_FACES;

/** A font file of a pack: a face, in one range of characters. */
export interface FontFile {
  readonly face: FontFace;
  readonly range: FontRange;
}

/** Folder of the font files beside the pages that use them: learners' pages have their own, to be copied alone. */
export const FONTS_FOLDER = 'fonts';

/** Elements that browsers and our styles set in italics. */
const SLANTED = new Set(['em', 'i', 'cite', 'dfn', 'var', 'address']);

/** The font files that a page's words need, in a fixed order. */
export function listFontFiles(content: readonly ElementContent[], further: string): FontFile[] {
  const upright: string[] = [further];
  const slanted: string[] = [];
  collectText(content, upright, slanted);
  const ranges = listFontRanges(upright.join('') + slanted.join(''));
  const slantedRanges = new Set(listFontRanges(slanted.join('')));
  return [
    ...ranges.flatMap((range): FontFile[] => [
      { face: 'regular', range },
      { face: 'bold', range },
    ]),
    ...ranges.filter((range) => slantedRanges.has(range)).map((range): FontFile => ({ face: 'italic', range })),
  ];
}

/** Texts of a tree; style and script hold none that is shown. */
function collectText(content: readonly ElementContent[], upright: string[], slanted: string[]): void {
  for (const node of content) {
    if (node.type === 'text') upright.push(node.value);
    else if (node.type === 'element') {
      collectText(node.children, SLANTED.has(node.tagName) ? slanted : upright, slanted);
    }
  }
}

/** File name of a font within {@link FONTS_FOLDER}. */
export function nameFontFile({ face, range }: FontFile): string {
  return `andika-${range}-${face}.woff`;
}

/**
 * The style rules that bring the files in. A browser reads a file only where a character of its range is shown, and takes
 * one that two ranges hold from the rule that comes last: so the first range, which has it, comes last. Where a face has
 * one file its range need not be told: what the file lacks comes from the next font anyway.
 */
export function renderFontFaces(files: readonly FontFile[]): string {
  const isOnly = (file: FontFile) => files.filter(({ face }) => face === file.face).length === 1;
  return files
    .toReversed()
    .map((file) => renderFontFace(file, isOnly(file) ? '' : `;unicode-range:${FONT_RANGES[file.range]}`))
    .join('');
}

function renderFontFace(file: FontFile, range: string): string {
  const { weight, style } = FONT_FACES[file.face];
  // `swap`: words can be read before the file is, in the next font of the list.
  return `@font-face{font-family:"Andika";font-style:${style};font-weight:${weight};font-display:swap;src:url("${FONTS_FOLDER}/${nameFontFile(file)}") format("woff")${range}}\n`;
}
