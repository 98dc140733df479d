/** Size of a printed sheet in whole millimetres, as it lies. */
export type SheetSize = `${number} x ${number}`;

export const A4_PORTRAIT: SheetSize = '210 x 297';
export const A4_LANDSCAPE: SheetSize = '297 x 210';
export const A3_LANDSCAPE: SheetSize = '420 x 297';

const MM_PER_POINT = 25.4 / 72;

/**
 * Sizes of a document's sheets, in order, read from its page objects. Chromium writes those uncompressed.
 * @throws Error when there is none, or a page says nothing of its size: the reading no longer fits what is written.
 */
export function readSheetSizes(pdf: Uint8Array): SheetSize[] {
  const text = Buffer.from(pdf).toString('latin1');
  const pages = text.split(/\bendobj\b/).filter((object) => /\/Type\s*\/Page\b/.test(object));
  if (pages.length === 0) throw new Error('No page was found in the printed document.');
  return pages.map((page): SheetSize => {
    const box = /\/MediaBox\s*\[\s*0\s+0\s+([\d.]+)\s+([\d.]+)\s*\]/.exec(page);
    if (box === null) throw new Error('A page of the printed document has no size of its own.');
    return `${toMillimetres(box[1])} x ${toMillimetres(box[2])}`;
  });
}

function toMillimetres(points: string | undefined): number {
  return Math.round(Number(points) * MM_PER_POINT);
}
