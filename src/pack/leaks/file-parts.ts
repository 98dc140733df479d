import { readBytesAsText, readLatin1 } from './read-bytes.ts';

/** A part of a picture, a sound or an archive in which something can be written. */
export interface FilePart {
  /** For messages, such as `PNG text chunk Comment`. */
  readonly name: string;
  /** Offsets of its first byte, and of the first one after it. */
  readonly from: number;
  readonly to: number;
  /** What it says, where it is packed in the file. */
  readonly unpacked?: string;
}

/**
 * Unpacks data of RFC 1951 (`deflate`) or RFC 1950 (`zlib`), as the place that runs the core provides it; undefined for
 * data that is faulty, or too much.
 */
export type Unpack = (bytes: Uint8Array, format: 'deflate' | 'zlib') => Uint8Array | undefined;

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

function readUint(bytes: Uint8Array, at: number, length: number, order: 'big' | 'little'): number {
  let value = 0;
  for (let index = 0; index < length; index += 1) {
    value = value * 256 + (bytes[order === 'big' ? at + index : at + length - 1 - index] ?? 0);
  }
  return value;
}

/** Chunks that hold the picture or how its colours and sizes are meant. */
const PNG_DRAWN: ReadonlySet<string> = new Set(
  'IHDR PLTE IDAT IEND tRNS cHRM gAMA iCCP sBIT sRGB cICP bKGD hIST pHYs sPLT acTL fcTL fdAT'.split(' '),
);

function listPngParts(bytes: Uint8Array, latin1: string, unpack: Unpack): FilePart[] {
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

function readUnpacked(bytes: Uint8Array | undefined): string {
  return bytes === undefined ? '' : readBytesAsText(bytes);
}

function listJpegParts(bytes: Uint8Array, latin1: string): FilePart[] {
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

function listGifParts(bytes: Uint8Array): FilePart[] {
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

/** Chunks that hold the sound or the picture itself. */
const RIFF_DRAWN: ReadonlySet<string> = new Set('fmt |data|fact|VP8 |VP8L|VP8X|ALPH|ANIM|ANMF|ICCP'.split('|'));

function listRiffParts(bytes: Uint8Array, latin1: string, begin = 12, end = bytes.length): FilePart[] {
  const parts: FilePart[] = [];
  for (let at = begin; at + 8 <= end; ) {
    const type = latin1.slice(at, at + 4);
    const length = readUint(bytes, at + 4, 4, 'little');
    const [from, to] = [at + 8, Math.min(at + 8 + length, end)];
    if (type === 'LIST') parts.push(...listRiffParts(bytes, latin1, from + 4, to));
    else if (!RIFF_DRAWN.has(type)) parts.push({ name: `chunk ${type.trim()}`, from, to });
    at = to + (length % 2);
  }
  return parts;
}

/** The frames of a tag at the beginning of a recording. Their sizes have seven bits a byte from version 4 on. */
function listId3Parts(bytes: Uint8Array, latin1: string): FilePart[] {
  const readSize = (at: number, bits: number) =>
    [0, 1, 2, 3].reduce((size, index) => size * 2 ** bits + (bytes[at + index] ?? 0), 0);
  const end = Math.min(10 + readSize(6, 7), bytes.length);
  const bits = (bytes[3] ?? 0) >= 4 ? 7 : 8;
  const parts: FilePart[] = [];
  for (let at = 10; at + 10 <= end && bytes[at] !== 0; ) {
    const [from, to] = [at + 10, Math.min(at + 10 + readSize(at + 4, bits), end)];
    parts.push({ name: `ID3 frame ${latin1.slice(at, at + 4)}`, from, to });
    at = to;
  }
  return parts;
}

const ZIP_END = 'PK\u0005\u0006';
const ZIP_ENTRY = 'PK\u0001\u0002';

/** What an archive says of its files, and the files in it. */
function listZipParts(bytes: Uint8Array, latin1: string, unpack: Unpack): FilePart[] {
  const parts: FilePart[] = [];
  for (let at = latin1.indexOf(ZIP_ENTRY); at !== -1; at = latin1.indexOf(ZIP_ENTRY, at + 4)) {
    const nameEnd = at + 46 + readUint(bytes, at + 28, 2, 'little');
    const comment = nameEnd + readUint(bytes, at + 30, 2, 'little');
    const name = latin1.slice(at + 46, nameEnd);
    parts.push({ name: 'archive’s list of files', from: at + 46, to: nameEnd });
    parts.push({
      name: `comment on ${name} in the archive`,
      from: comment,
      to: comment + readUint(bytes, at + 32, 2, 'little'),
    });
    parts.push(readZipEntry(bytes, at, name, unpack));
  }
  const end = latin1.lastIndexOf(ZIP_END);
  if (end !== -1 && end + 22 < bytes.length) {
    parts.push({ name: 'archive comment', from: end + 22, to: bytes.length });
  }
  return parts;
}

/** @param at Offset of the entry in the list. */
function readZipEntry(bytes: Uint8Array, at: number, name: string, unpack: Unpack): FilePart {
  const local = readUint(bytes, at + 42, 4, 'little');
  const from = local + 30 + readUint(bytes, local + 26, 2, 'little') + readUint(bytes, local + 28, 2, 'little');
  const to = from + readUint(bytes, at + 20, 4, 'little');
  const isPacked = readUint(bytes, at + 10, 2, 'little') === 8;
  const part = { name: `file ${name} in the archive`, from, to };
  return isPacked ? { ...part, unpacked: readUnpacked(unpack(bytes.subarray(from, to), 'deflate')) } : part;
}
