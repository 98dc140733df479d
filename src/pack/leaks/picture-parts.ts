import { type FilePart, readUint, readUnpacked, type Unpack } from './file-part.ts';
import { readBytesAsText, readLatin1 } from './read-bytes.ts';

/** Chunks that hold the picture or how its colours and sizes are meant. */
const PNG_DRAWN: ReadonlySet<string> = new Set(
  'IHDR PLTE IDAT IEND tRNS cHRM gAMA iCCP sBIT sRGB cICP bKGD hIST pHYs sPLT acTL fcTL fdAT'.split(' '),
);

/** Parts of a PNG file. */
export function listPngParts(bytes: Uint8Array, latin1: string, unpack: Unpack): FilePart[] {
  const parts: FilePart[] = [];
  for (let at = 8; at + 8 <= bytes.length; ) {
    const length = readUint(bytes, at, 4, 'big');
    const type = latin1.slice(at + 4, at + 8);
    const [from, to] = [at + 8, Math.min(at + 8 + length, bytes.length)];
    if (!PNG_DRAWN.has(type))
      parts.push(describePngChunk(latin1.slice(from, to), type, from, (at) => unpack(bytes.subarray(at, to), 'zlib')));
    at = to + 4;
    if (type !== 'IEND') continue;
    if (at < bytes.length) parts.push({ name: 'bytes behind the end of the picture', from: at, to: bytes.length });
    break;
  }
  return parts;
}

/** @param from Offset of the chunk's data. @param unpackFrom Unpacks the data from an offset of the file on. */
function describePngChunk(
  data: string,
  type: string,
  from: number,
  unpackFrom: (at: number) => Uint8Array | undefined,
): FilePart {
  const part = { from, to: from + data.length };
  if (!/^[tiz]TXt$|^tEXt$/.test(type)) return { ...part, name: `PNG chunk ${type}` };
  const keyEnd = data.indexOf('\0');
  const name = `PNG text chunk ${data.slice(0, keyEnd === -1 ? data.length : keyEnd)}`;
  // After the key of an iTXt chunk: packed or not, how, then a language tag and the key in that language.
  const isPacked = type === 'zTXt' || (type === 'iTXt' && data.charCodeAt(keyEnd + 1) === 1);
  if (!isPacked) return { ...part, name };
  const words = type === 'zTXt' ? keyEnd + 2 : data.indexOf('\0', data.indexOf('\0', keyEnd + 3) + 1) + 1;
  return { ...part, name, unpacked: readUnpacked(unpackFrom(from + words)) };
}

/** Parts of a JPEG file. */
export function listJpegParts(bytes: Uint8Array, latin1: string): FilePart[] {
  const parts: FilePart[] = [];
  let at = 2;
  while (at + 4 <= bytes.length && bytes[at] === 0xff) {
    const marker = bytes[at + 1] ?? 0;
    if (marker === 0xda) break;
    const [from, to] = [at + 4, Math.min(at + 2 + readUint(bytes, at + 2, 2, 'big'), bytes.length)];
    const name = nameJpegSegment(marker, latin1.slice(from, from + 30));
    if (name !== undefined) parts.push({ name, from, to });
    at = Math.max(to, at + 2);
  }
  const end = latin1.lastIndexOf('\u00ff\u00d9');
  if (end !== -1 && end + 2 < bytes.length) {
    parts.push({ name: 'bytes behind the end of the picture', from: end + 2, to: bytes.length });
  }
  return parts;
}

function nameJpegSegment(marker: number, begin: string): string | undefined {
  if (marker === 0xfe) return 'JPEG comment';
  if (marker < 0xe0 || marker > 0xef) return undefined;
  if (begin.startsWith('Exif')) return 'Exif data';
  if (begin.startsWith('http://ns.adobe.com/')) return 'XMP data';
  return begin.startsWith('Photoshop') ? 'IPTC data' : `JPEG segment APP${marker - 0xe0}`;
}

/** Parts of a GIF file. */
export function listGifParts(bytes: Uint8Array): FilePart[] {
  const parts: FilePart[] = [];
  const skipColours = (flags: number) => ((flags & 0x80) === 0 ? 0 : 3 * 2 ** ((flags & 7) + 1));
  let at = 13 + skipColours(bytes[10] ?? 0);
  while (at < bytes.length) {
    const kind = bytes[at];
    if (kind === 0x21) {
      const end = skipBlocks(bytes, at + 2);
      const label = bytes[at + 1];
      const name = label === 0xfe ? 'GIF comment' : 'GIF extension';
      if (label !== 0xf9) parts.push({ name, from: at + 2, to: end, unpacked: joinBlocks(bytes, at + 2) });
      at = end;
    } else if (kind === 0x2c) at = skipBlocks(bytes, at + 11 + skipColours(bytes[at + 9] ?? 0));
    else break;
  }
  if (at + 1 < bytes.length) {
    parts.push({ name: 'bytes behind the end of the picture', from: at + 1, to: bytes.length });
  }
  return parts;
}

/** @returns The offset after the blocks that begin at one, each with its length before it. */
function skipBlocks(bytes: Uint8Array, from: number): number {
  let at = from;
  for (let length = bytes[at] ?? 0; length !== 0; length = bytes[at] ?? 0) at += length + 1;
  return at + 1;
}

/** A long text is cut into blocks. */
function joinBlocks(bytes: Uint8Array, from: number): string {
  let text = '';
  let at = from;
  for (let length = bytes[at] ?? 0; length !== 0; length = bytes[at] ?? 0) {
    text += readLatin1(bytes.subarray(at + 1, at + 1 + length));
    at += length + 1;
  }
  return readBytesAsText(Uint8Array.from(text, (letter) => letter.charCodeAt(0)));
}
