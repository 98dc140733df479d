import { hasBytes, viewOf } from './bytes.ts';
import type { Parsed } from './media-fault.ts';
import { type ExifNotes, parseExif } from './parse-exif.ts';
import { CUT_SHORT, type PixelSize } from './parse-png.ts';

/** Whether bytes begin as a JPEG file. */
export function isJpeg(bytes: Uint8Array): boolean {
  return hasBytes(bytes, 0, [0xff, 0xd8, 0xff]);
}

/**
 * Size of a JPEG picture as it is shown, and what the camera noted. Its segments are walked up to the picture itself
 * (ITU-T T.81, annex B, from memory), and the mark of its end must be there.
 */
export function parseJpeg(bytes: Uint8Array): Parsed<PixelSize & Pick<ExifNotes, 'tellsPlace'>> {
  const view = viewOf(bytes);
  let notes: ExifNotes = { isTurned: false, tellsPlace: false };
  for (let at = 2; at + 9 < bytes.length; ) {
    const marker = bytes[at + 1] ?? 0;
    if (bytes[at] !== 0xff) break;
    // Any number of FF may stand before a marker, and some markers stand alone.
    if (marker === 0xff) at += 1;
    else if (marker === 0x01 || (marker >= 0xd0 && marker <= 0xd8)) at += 2;
    else {
      const length = view.getUint16(at + 2);
      if (isFrame(marker)) {
        return endsWhole(bytes, at) ? { value: sizeOf(view, at, notes) } : { fault: CUT_SHORT };
      }
      if (marker === 0xe1) {
        const { isTurned, tellsPlace } = parseExif(bytes.subarray(at + 4, at + 2 + length));
        notes = { isTurned: isTurned || notes.isTurned, tellsPlace: tellsPlace || notes.tellsPlace };
      }
      at += 2 + length;
    }
  }
  return { fault: CUT_SHORT };
}

/** The sixteen kinds of frame, without the three tables that are numbered among them. */
function isFrame(marker: number): boolean {
  return marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
}

function sizeOf(view: DataView, frameAt: number, { isTurned, tellsPlace }: ExifNotes) {
  const heightPx = view.getUint16(frameAt + 5);
  const widthPx = view.getUint16(frameAt + 7);
  return isTurned ? { widthPx: heightPx, heightPx: widthPx, tellsPlace } : { widthPx, heightPx, tellsPlace };
}

/** Telephones put more behind the picture: the mark may stand anywhere behind the frame. */
function endsWhole(bytes: Uint8Array, frameAt: number): boolean {
  for (let at = bytes.length - 2; at > frameAt; at -= 1) {
    if (bytes[at] === 0xff && bytes[at + 1] === 0xd9) return true;
  }
  return false;
}
