import { hasBytes, viewOf } from './bytes.ts';

/** What a camera noted in a photo. */
export interface ExifNotes {
  /** Whether the picture is shown turned by a quarter, so that width and height change places. */
  readonly isTurned: boolean;
  /** Whether the place where it was taken stands in it. */
  readonly tellsPlace: boolean;
}

const NOTHING: ExifNotes = { isTurned: false, tellsPlace: false };

const ORIENTATION = 0x0112;
const GPS_NOTES = 0x8825;

/**
 * Reads what stands in an Exif segment: the tags of its first directory (Exif 2.32, sections 4.5.4 and 4.6.4, from
 * memory). Anything odd counts as nothing noted.
 * @param segment The contents of an APP1 segment.
 */
export function parseExif(segment: Uint8Array): ExifNotes {
  if (!hasBytes(segment, 0, 'Exif\0\0') || segment.length < 14) return NOTHING;
  const tiff = viewOf(segment.subarray(6));
  const little = tiff.getUint16(0) === 0x4949;
  const directory = tiff.getUint32(4, little);
  if (directory + 2 > tiff.byteLength) return NOTHING;
  const count = Math.min(tiff.getUint16(directory, little), Math.floor((tiff.byteLength - directory - 2) / 12));
  let { isTurned, tellsPlace } = NOTHING;
  for (let entry = 0; entry < count; entry += 1) {
    const at = directory + 2 + entry * 12;
    const tag = tiff.getUint16(at, little);
    // Orientations 5 to 8 of the eight lay the picture on its side.
    if (tag === ORIENTATION) isTurned = tiff.getUint16(at + 8, little) >= 5 && tiff.getUint16(at + 8, little) <= 8;
    if (tag === GPS_NOTES) tellsPlace = true;
  }
  return { isTurned, tellsPlace };
}
