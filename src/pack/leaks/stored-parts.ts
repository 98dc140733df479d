import { PART_ID } from '../../lesson/take-out-parts.ts';
import type { MarkupElement } from './read-markup.ts';

const known = new WeakMap<readonly MarkupElement[], ReadonlyMap<string, number>>();

/** Finds the drawn parts that a page writes once: index of their elements by the address that uses them, `#drawn-1`. */
function findStoredParts(elements: readonly MarkupElement[]): ReadonlyMap<string, number> {
  const parts =
    known.get(elements) ??
    new Map(
      elements.flatMap(({ tag }, index) => {
        const id = tag.attributes.find(({ name }) => name === 'id')?.value ?? '';
        return PART_ID.test(id) ? [[`#${id}`, index] as const] : [];
      }),
    );
  known.set(elements, parts);
  return parts;
}

/** Gives the index of the drawn part that an element uses; undefined for any other element. */
export function findUsedPart(elements: readonly MarkupElement[], element: MarkupElement): number | undefined {
  if (element.tag.name !== 'use') return undefined;
  const address = element.tag.attributes.find(({ name }) => name === 'href')?.value;
  return address === undefined ? undefined : findStoredParts(elements).get(address);
}
