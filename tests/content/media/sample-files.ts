import type { AssetKind, ContentAssets } from '../../../src/content/media/content-assets.ts';
import { sha256 } from '../../../src/node/sha256.ts';

/** Bytes from numbers, ASCII text and other bytes, one after another. */
export function joinBytes(...parts: readonly (number | string | Uint8Array | readonly number[])[]): Uint8Array {
  const pieces = parts.map((part) => {
    if (typeof part === 'number') return [part];
    return typeof part === 'string' ? [...part].map((sign) => sign.charCodeAt(0)) : part;
  });
  const whole = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    whole.set(piece, at);
    at += piece.length;
  }
  return whole;
}

/** A number in so many bytes, the high one first. */
export function bigEndian(value: number, bytes = 4): number[] {
  return Array.from({ length: bytes }, (_, index) => Math.floor(value / 256 ** (bytes - 1 - index)) % 256);
}

/** A number in so many bytes, the low one first. */
export function littleEndian(value: number, bytes = 4): number[] {
  return bigEndian(value, bytes).reverse();
}

/** A PNG file: only its frame, which is all that is looked at. Chunks stand between the head and the picture. */
export function makePng(widthPx: number, heightPx: number, ...chunks: readonly string[]): Uint8Array {
  const chunk = (type: string, content: readonly number[]) =>
    joinBytes(bigEndian(content.length), type, content, bigEndian(0));
  return joinBytes(
    [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a],
    chunk('IHDR', [...bigEndian(widthPx), ...bigEndian(heightPx), 8, 2, 0, 0, 0]),
    ...chunks.map((type) => chunk(type, [1, 2, 3])),
    chunk('IDAT', [0, 1, 2, 3]),
    chunk('IEND', []),
  );
}

/** A segment of a JPEG file with its length. */
export function makeSegment(marker: number, content: Uint8Array): Uint8Array {
  return joinBytes(0xff, marker, bigEndian(content.length + 2, 2), content);
}

/** A JPEG file: only its frame. Segments stand before it; `frame` is the marker of the kind of JPEG. */
export function makeJpeg(
  widthPx: number,
  heightPx: number,
  segments: readonly Uint8Array[] = [],
  frame = 0xc0,
): Uint8Array {
  const size = joinBytes(8, bigEndian(heightPx, 2), bigEndian(widthPx, 2), 3, [1, 17, 0, 2, 17, 0, 3, 17, 0]);
  return joinBytes(
    [0xff, 0xd8],
    ...segments,
    makeSegment(frame, size),
    makeSegment(0xda, joinBytes(0)),
    [9, 9],
    [0xff, 0xd9],
  );
}

/** An Exif segment with short numbers by tag. */
export function makeExif(tags: Readonly<Record<number, number>>, isLittle = false): Uint8Array {
  const write = isLittle ? littleEndian : bigEndian;
  const entries = Object.entries(tags).map(([tag, value]) =>
    joinBytes(write(Number(tag), 2), write(3, 2), write(1), write(value, 2), [0, 0]),
  );
  const tiff = joinBytes(
    isLittle ? 'II' : 'MM',
    write(42, 2),
    write(8),
    write(entries.length, 2),
    ...entries,
    write(0),
  );
  return makeSegment(0xe1, joinBytes('Exif\0\0', tiff));
}

/** A WAV file of silence; `format` 1 is plain numbers. */
export function makeWav(dataBytes = 8, format = 1): Uint8Array {
  const head = joinBytes(
    littleEndian(format, 2),
    littleEndian(1, 2),
    littleEndian(8000),
    littleEndian(16000),
    littleEndian(2, 2),
    littleEndian(16, 2),
  );
  const body = joinBytes(
    'WAVE',
    'fmt ',
    littleEndian(16),
    head,
    'LIST',
    littleEndian(3),
    'abc',
    0,
    'data',
    littleEndian(dataBytes),
    new Uint8Array(dataBytes),
  );
  return joinBytes('RIFF', littleEndian(body.length), body);
}

/** Frames of MPEG-1 layer III at 32 kbit/s and 48 kHz: 96 bytes each (144 x 32000 / 48000). */
export function makeMp3(frames = 4, tag: Uint8Array = new Uint8Array()): Uint8Array {
  const frame = joinBytes([0xff, 0xfb, 0x14, 0xc0], new Uint8Array(92));
  return joinBytes(tag, ...Array.from({ length: frames }, () => frame));
}

/** An ID3 tag with so many bytes in it, the size written seven bits a byte. */
export function makeId3(contentBytes: number): Uint8Array {
  const size = [21, 14, 7, 0].map((bits) => (contentBytes >> bits) & 0x7f);
  return joinBytes('ID3', [4, 0, 0], size, new Uint8Array(contentBytes).fill(0xff));
}

/** An Ogg file of two pages, the first with a codec's mark. */
export function makeOgg(mark = 'OpusHead'): Uint8Array {
  const page = (content: Uint8Array) => joinBytes('OggS', new Uint8Array(22), [1, content.length], content);
  return joinBytes(page(joinBytes(mark, [1, 1])), page(new Uint8Array(40)));
}

/** A box of an MPEG-4 file. */
export function makeBox(type: string, ...content: readonly (string | Uint8Array | readonly number[])[]): Uint8Array {
  const whole = joinBytes(...content);
  return joinBytes(bigEndian(whole.length + 8), type, whole);
}

/** An MPEG-4 file with tracks of some kinds (`soun`, `vide`) and one kind of samples. */
export function makeM4a(kinds: readonly string[] = ['soun'], samples = 'mp4a', brand = 'M4A '): Uint8Array {
  const tracks = kinds.map((kind) =>
    makeBox(
      'trak',
      makeBox(
        'mdia',
        makeBox('hdlr', new Uint8Array(8), kind, new Uint8Array(13)),
        makeBox('minf', makeBox('stbl', makeBox('stsd', new Uint8Array(8), makeBox(samples, new Uint8Array(28))))),
      ),
    ),
  );
  return joinBytes(makeBox('ftyp', brand, new Uint8Array(4)), makeBox('moov', ...tracks), makeBox('mdat', [1, 2, 3]));
}

/** An SVG file from what stands in its first tag and between its tags. */
export function makeSvg(inside = '', attributes = 'viewBox="0 0 40 30"'): Uint8Array {
  return new TextEncoder().encode(`<svg xmlns="http://www.w3.org/2000/svg" ${attributes}>${inside}</svg>`);
}

/** Assets from files in memory, by kind and name; notes which were read. */
export function makeAssets(
  files: Partial<Record<AssetKind, Readonly<Record<string, Uint8Array>>>>,
): ContentAssets & { readonly filesRead: readonly string[] } {
  const done: string[] = [];
  return {
    list: (kind) => Object.keys(files[kind] ?? {}),
    showPath: (kind, file) => `content/${kind}/${file}`,
    read(kind, file, mostBytes) {
      done.push(file);
      const bytes = files[kind]?.[file];
      if (bytes === undefined) throw new Error(`${file} is not listed.`);
      return bytes.length > mostBytes ? { sizeBytes: bytes.length } : { bytes };
    },
    digest: sha256.hex,
    filesRead: done,
  };
}
