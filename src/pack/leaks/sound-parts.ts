import { type FilePart, readUint } from './file-part.ts';

/** Chunks that hold the sound or the picture itself. */
const RIFF_DRAWN: ReadonlySet<string> = new Set('fmt |data|fact|VP8 |VP8L|VP8X|ALPH|ANIM|ANMF|ICCP'.split('|'));

/** Parts of a WAVE or WebP file, and of the lists in it. */
export function listRiffParts(bytes: Uint8Array, latin1: string, begin = 12, end = bytes.length): FilePart[] {
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
export function listId3Parts(bytes: Uint8Array, latin1: string): FilePart[] {
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
