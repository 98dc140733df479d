import type { ElementContent } from 'hast';
import { readText } from './fold-text.ts';

/** A right option this many times as long as all others, or as short, gives itself away. Our own choice. */
const BY_FAR = 1.5;

/** Anything that is shown as an option. */
interface Shown {
  readonly content: readonly ElementContent[];
}

/** Whether the right option is by far the longest or the shortest. */
export function standsOut(right: readonly ElementContent[], wrong: readonly Shown[]): boolean {
  const length = countLetters(right);
  const others = wrong.map(({ content }) => countLetters(content));
  return length > BY_FAR * Math.max(...others) || length * BY_FAR < Math.min(...others);
}

/**
 * The sets of wrong options beside which the right one does not stand out by its length; all of them where it stands out
 * beside each.
 */
export function keepEvenLengths<Option extends Shown>(
  right: readonly ElementContent[],
  sets: readonly (readonly Option[])[],
): readonly (readonly Option[])[] {
  const even = sets.filter((set) => !standsOut(right, set));
  return even.length > 0 ? even : sets;
}

function countLetters(content: readonly ElementContent[]): number {
  return [...readText(content).trim()].length;
}
