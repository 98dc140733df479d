import type { Parsed } from './media-fault.ts';

/** How a kind of sound file is told from others and looked through. */
export interface SoundType {
  /** Ending of its files in a pack, with the full stop. */
  readonly ending: string;
  readonly mediaType: string;
  /** Whether the first bytes are of this kind. */
  matches(bytes: Uint8Array): boolean;
  /** Whether the rest is: a whole file that browsers play. Without a value of its own. */
  parse(bytes: Uint8Array): Parsed<undefined>;
}

/** For a sound that breaks off. */
export const SOUND_CUT_SHORT = {
  found: 'breaks off before its end, or holds no sound',
  expected: 'a whole recording',
  remedy: 'save or copy it again',
} as const;

/** For a sound in a form that not every browser plays. */
export function describeOtherForm(found: string) {
  return { found: `holds ${found}`, expected: 'a sound that every browser plays', remedy: 'save it as MP3' } as const;
}
