import { hasBytes } from './bytes.ts';
import type { Parsed } from './media-fault.ts';
import { describeOtherForm, SOUND_CUT_SHORT, type SoundType } from './sound-types.ts';

/** Length of the head of a page: RFC 3533, section 6. */
const HEAD_BYTES = 27;

/** Ogg with Opus or Vorbis in it. */
export const ogg: SoundType = {
  ending: '.ogg',
  mediaType: 'audio/ogg',
  matches: (bytes) => hasBytes(bytes, 0, 'OggS'),
  parse: parseOgg,
};

function parseOgg(bytes: Uint8Array): Parsed<undefined> {
  const first = HEAD_BYTES + (bytes[HEAD_BYTES - 1] ?? 0);
  // RFC 7845, section 5.1; for Vorbis the Vorbis I specification, section 4.2.1, from memory.
  const isKnown = hasBytes(bytes, first, 'OpusHead') || hasBytes(bytes, first, '\u0001vorbis');
  if (!isKnown) return { fault: describeOtherForm('an Ogg file without Opus or Vorbis sound') };
  return findPagesEnd(bytes) === bytes.length ? { value: undefined } : { fault: SOUND_CUT_SHORT };
}

/** Where the last whole page ends; pages follow one another without gaps. */
function findPagesEnd(bytes: Uint8Array): number {
  let at = 0;
  while (hasBytes(bytes, at, 'OggS')) {
    const segments = bytes[at + HEAD_BYTES - 1] ?? 0;
    const sizes = bytes.subarray(at + HEAD_BYTES, at + HEAD_BYTES + segments);
    at += HEAD_BYTES + segments + sizes.reduce((sum, size) => sum + size, 0);
  }
  return at;
}
