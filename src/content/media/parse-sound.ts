import type { Parsed } from './media-fault.ts';
import { nameFileType } from './name-file-type.ts';
import { m4a } from './parse-m4a.ts';
import { mp3 } from './parse-mp3.ts';
import { ogg } from './parse-ogg.ts';
import { wav } from './parse-wav.ts';
import type { SoundType } from './sound-types.ts';

/** A spoken name lasts a few seconds: three of them as plain 16 bit WAV, or eighteen as MP3 of 128 kbit/s. */
export const MOST_NAME_BYTES = 300_000;
/** A run lasts a few minutes: five of them as MP3 of 128 kbit/s. */
export const MOST_RUN_BYTES = 5_000_000;

const TYPES: readonly SoundType[] = [wav, ogg, m4a, mp3];

/** Looks through a sound file: its kind by its bytes, whole, and in a form that browsers play. */
export function parseSound(bytes: Uint8Array): Parsed<SoundType> {
  const type = TYPES.find(({ matches }) => matches(bytes));
  if (type === undefined) {
    const found = `holds ${nameFileType(bytes)}`;
    return { fault: { found, expected: 'a WAV, MP3, Ogg or M4A sound', remedy: 'save it as one of these' } };
  }
  const { fault } = type.parse(bytes);
  return fault === undefined ? { value: type } : { fault };
}
