import { hasBytes, readTag, viewOf } from './bytes.ts';
import type { Parsed } from './media-fault.ts';
import { describeOtherForm, SOUND_CUT_SHORT, type SoundType } from './sound-types.ts';

/** Plain numbers, floating-point numbers, and either of them in the longer form: Microsoft's RIFF notes, from memory. */
const FORMATS: ReadonlySet<number> = new Set([1, 3, 0xfffe]);

/** RIFF/WAVE. */
export const wav: SoundType = {
  ending: '.wav',
  mediaType: 'audio/wav',
  matches: (bytes) => hasBytes(bytes, 0, 'RIFF') && hasBytes(bytes, 8, 'WAVE'),
  parse: parseWav,
};

function parseWav(bytes: Uint8Array): Parsed<undefined> {
  const view = viewOf(bytes);
  let format: number | undefined;
  for (let at = 12; at + 8 <= bytes.length; ) {
    const tag = readTag(bytes, at);
    const size = view.getUint32(at + 4, true);
    if (tag === 'fmt ' && size >= 16 && at + 24 <= bytes.length) format = view.getUint16(at + 8, true);
    if (tag === 'data') {
      if (format === undefined || size === 0 || at + 8 + size > bytes.length) return { fault: SOUND_CUT_SHORT };
      return FORMATS.has(format) ? { value: undefined } : { fault: describeOtherForm('a packed WAV sound') };
    }
    at += 8 + size + (size % 2);
  }
  return { fault: SOUND_CUT_SHORT };
}
