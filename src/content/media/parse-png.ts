import { hasBytes, readTag, viewOf } from './bytes.ts';
import type { Parsed } from './media-fault.ts';

/** Width and height in pixels. */
export interface PixelSize {
  readonly widthPx: number;
  readonly heightPx: number;
}

const SIGNATURE = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a];

/** Whether bytes begin as a PNG file: PNG (W3C, third edition), section 5.2, from memory. */
export function isPng(bytes: Uint8Array): boolean {
  return hasBytes(bytes, 0, SIGNATURE);
}

/** Size of a PNG picture. Its chunks are walked to the end, so that a file cut short in copying is found. */
export function parsePng(bytes: Uint8Array): Parsed<PixelSize> {
  const chunks = listChunks(bytes);
  if (chunks.includes('acTL')) {
    const found = 'holds a picture that moves';
    return { fault: { found, expected: 'a still picture', remedy: 'save one picture of it' } };
  }
  if (chunks[0] !== 'IHDR' || !chunks.includes('IDAT') || chunks.at(-1) !== 'IEND') return { fault: CUT_SHORT };
  const view = viewOf(bytes);
  return { value: { widthPx: view.getUint32(16), heightPx: view.getUint32(20) } };
}

/** For a picture that breaks off. */
export const CUT_SHORT = {
  found: 'breaks off before its end',
  expected: 'a whole picture',
  remedy: 'save or copy it again',
} as const;

/** Types of the chunks that are whole, in order, up to the end of the picture. */
function listChunks(bytes: Uint8Array): string[] {
  const view = viewOf(bytes);
  const chunks: string[] = [];
  for (let at = SIGNATURE.length; at + 12 <= bytes.length; ) {
    const end = at + 12 + view.getUint32(at);
    if (end > bytes.length) return chunks;
    const type = readTag(bytes, at + 4);
    chunks.push(type);
    if (type === 'IEND') return chunks;
    at = end;
  }
  return chunks;
}
