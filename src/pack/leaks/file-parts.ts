import { listZipParts } from './archive-parts.ts';
import type { FilePart, Unpack } from './file-part.ts';
import { listGifParts, listJpegParts, listPngParts } from './picture-parts.ts';
import { listId3Parts, listRiffParts } from './sound-parts.ts';

/**
 * The parts of a file that hold no picture and no sound, by the formats themselves: PNG (W3C, third edition), JPEG
 * (ITU-T T.81), GIF (89a), RIFF for WAVE and WebP, ID3 (2.3 and 2.4), ZIP (APPNOTE 6.3); their layouts are from memory.
 * A file of another kind, or a faulty one, has none.
 * @param latin1 The file by `readLatin1`.
 */
export function listFileParts(bytes: Uint8Array, latin1: string, unpack: Unpack): FilePart[] {
  if (latin1.startsWith('\u0089PNG\r\n')) return listPngParts(bytes, latin1, unpack);
  if (latin1.startsWith('\u00ff\u00d8\u00ff')) return listJpegParts(bytes, latin1);
  if (/^GIF8[79]a/.test(latin1)) return listGifParts(bytes);
  if (latin1.startsWith('RIFF')) return listRiffParts(bytes, latin1);
  if (latin1.startsWith('ID3')) return listId3Parts(bytes, latin1);
  return latin1.startsWith('PK') ? listZipParts(bytes, latin1, unpack) : [];
}
