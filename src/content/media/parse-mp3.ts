import { hasBytes } from './bytes.ts';
import type { Parsed } from './media-fault.ts';
import { SOUND_CUT_SHORT, type SoundType } from './sound-types.ts';

/** MPEG-1, 2 or 2.5, layer III, with or without an ID3 tag. */
export const mp3: SoundType = {
  ending: '.mp3',
  mediaType: 'audio/mpeg',
  matches: (bytes) => hasBytes(bytes, 0, 'ID3') || findFrameLength(bytes, 0) !== undefined,
  parse: parseMp3,
};

/** Three frames in turn are no accident. */
function parseMp3(bytes: Uint8Array): Parsed<undefined> {
  let at = skipTag(bytes);
  for (let frame = 0; frame < 3; frame += 1) {
    const length = findFrameLength(bytes, at);
    if (length === undefined || at + length > bytes.length) return { fault: SOUND_CUT_SHORT };
    at += length;
  }
  return { value: undefined };
}

/** Where the sound begins: behind an ID3v2 tag (its size is written seven bits a byte) and the zeros that may follow it. */
function skipTag(bytes: Uint8Array): number {
  if (!hasBytes(bytes, 0, 'ID3')) return 0;
  const size = bytes.subarray(6, 10).reduce((sum, byte) => sum * 128 + (byte & 0x7f), 0);
  let at = 10 + size + (((bytes[5] ?? 0) & 0x10) === 0 ? 0 : 10);
  while (bytes[at] === 0) at += 1;
  return at;
}

/** Thousand bits a second by the number in the header: ISO/IEC 11172-3 and 13818-3, layer III, from memory. */
const RATES_1 = [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
const RATES_2 = [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];
/** Samples a second of MPEG-1; half of it for MPEG-2, a quarter for 2.5. */
const SAMPLE_RATES = [44_100, 48_000, 32_000];

/** Bytes of the frame that begins at an offset; nothing when none does. */
function findFrameLength(bytes: Uint8Array, at: number): number | undefined {
  const [sync = 0, kind = 0, rates = 0] = bytes.subarray(at, at + 3);
  const version = (kind >> 3) & 3;
  const isLayer3 = ((kind >> 1) & 3) === 1;
  if (sync !== 0xff || (kind & 0xe0) !== 0xe0 || version === 1 || !isLayer3) return undefined;
  const kilobits = (version === 3 ? RATES_1 : RATES_2)[rates >> 4];
  const sampleRate = SAMPLE_RATES[(rates >> 2) & 3];
  if (kilobits === undefined || kilobits === 0 || sampleRate === undefined) return undefined;
  const slower = version === 3 ? 1 : version === 2 ? 2 : 4;
  const bytesASample = version === 3 ? 144 : 72;
  return Math.floor((bytesASample * kilobits * 1000 * slower) / sampleRate) + ((rates >> 1) & 1);
}
