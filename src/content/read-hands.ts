import type { WrittenHands } from './hand-poses.ts';
import { isMap } from './is-map.ts';
import { HAND_KEYS, type HandWords } from './parse-hand-line.ts';

export const HANDS = ['left', 'right', 'both'] as const;
export type HandName = (typeof HANDS)[number];
export const SIDES = ['left', 'right'] as const;

/** What a pose says as written, which may have any fault. */
export interface ReadHands {
  /** The hands it names. */
  readonly names: readonly HandName[];
  readonly poses: WrittenHands<HandWords>;
}

/** Reads the hands of a gesture, or of its second pose; what is no text is passed over. */
export function readHands(value: Readonly<Record<string, unknown>>): ReadHands {
  const names = HANDS.filter((hand) => Object.hasOwn(value, hand));
  return { names, poses: Object.fromEntries(names.map((hand) => [hand, readWords(value[hand])])) };
}

function readWords(hand: unknown): HandWords {
  if (!isMap(hand)) return {};
  const words: HandWords = {};
  for (const key of HAND_KEYS) {
    const word = hand[key];
    if (typeof word === 'string') words[key] = word;
  }
  return words;
}
