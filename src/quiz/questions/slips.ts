import type { ElementContent } from 'hast';
import type { Slip } from '../model.ts';

/**
 * The wrong numbers to be expected on a line, each once: none that is right, and none under 1. Of slips that come to the same
 * number the first is kept.
 */
export function createSlips(
  right: number,
  slips: readonly (readonly [answer: number, means: ElementContent[]])[],
): Slip[] {
  const found = new Map<number, ElementContent[]>();
  for (const [answer, means] of slips)
    if (answer !== right && answer >= 1 && !found.has(answer)) found.set(answer, means);
  return Array.from(found, ([answer, means]) => ({ answer: String(answer), means }));
}
