import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plusFromState } from 'pure-rand/generator/xoroshiro128plus';
import type { RandomGenerator } from 'pure-rand/types/RandomGenerator';

/** A stream of choices that depends on its seed alone: the same on any machine. Each choice moves it on. */
export interface Random {
  /** A whole number from 0 to `count - 1`, all equally likely. Throws RangeError when `count` is no whole number above 0. */
  below(count: number): number;
}

/** Outputs thrown away at the start, so that the bits of the four words of state are well mixed. Our own choice. */
const OUTPUTS_DROPPED = 16;

const FNV_OFFSET_BASIS = 0x811c9dc5;
const FNV_PRIME = 0x01000193;

/**
 * FNV-1a with 32 bits: Fowler, Noll and Vo, "The FNV Non-Cryptographic Hash Algorithm", which gives both constants.
 * @param bytes Whole numbers from 0 to 255.
 * @param before The hash of the bytes before these; the algorithm's offset basis where there are none.
 * @returns A whole number from 0 to 2^32 - 1.
 */
export function hashBytes(bytes: ArrayLike<number>, before: number = FNV_OFFSET_BASIS): number {
  let hash = before;
  // Seeds hold all that a key says. Counting through the bytes takes a fraction of the time that an iterator does.
  for (let place = 0; place < bytes.length; place++) hash = Math.imul(hash ^ (bytes[place] ?? 0), FNV_PRIME);
  return hash >>> 0;
}

/**
 * A stream of choices from a text. Four hashes of its UTF-8 bytes, each behind a byte of its own, are the state of the generator.
 * Texts that look the same (NFC) are the same seed.
 */
export function createRandom(seed: string): Random {
  const bytes = new TextEncoder().encode(seed.normalize('NFC'));
  const words = [1, 2, 3, 4].map((prefix) => hashBytes(bytes, hashBytes([prefix])) | 0);
  // A state of nothing but zeros would never leave zero.
  const state = words.some((word) => word !== 0) ? words : [1, 0, 0, 0];
  const generator: RandomGenerator = xoroshiro128plusFromState(state);
  for (let dropped = 0; dropped < OUTPUTS_DROPPED; dropped++) generator.next();
  return {
    below(count) {
      if (!Number.isInteger(count) || count < 1) throw new RangeError(`Cannot choose among ${count} things.`);
      return uniformInt(generator, 0, count - 1);
    },
  };
}

/** The same items in a new order, every order equally likely (Fisher and Yates, Durstenfeld's form). The list given stays as it is. */
export function shuffle<Item>(items: readonly Item[], random: Random): Item[] {
  // Drawn without replacement from what is left, which needs no unchecked index.
  const left = [...items];
  const shuffled: Item[] = [];
  while (left.length > 0) shuffled.push(...left.splice(random.below(left.length), 1));
  return shuffled;
}

/** One of the items, all equally likely. Throws RangeError when there are none. */
export function pick<Item>(items: readonly Item[], random: Random): Item {
  const [picked] = items.slice(random.below(items.length));
  // `below` is less than the length, so there is an item unless the list itself holds `undefined`.
  return picked as Item;
}
