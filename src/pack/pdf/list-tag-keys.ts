import type { OpenedPart } from './open-part.ts';
import { findEntry, findNumber, type PdfValue } from './pdf-value.ts';

/**
 * Keys by which pages and links of a part find their tags, each with what it leads to. Those of links that are left out
 * are left out.
 */
export function listTagKeys(part: OpenedPart): [number, PdfValue][] {
  const { document, droppedLinks, tags } = part;
  const dropped = new Set(
    [...droppedLinks].map((link) => findNumber(document.objects.get(link)?.value, 'StructParent')),
  );
  return listBelow(document.find(findEntry(tags, 'ParentTree')), part).filter(([key]) => !dropped.has(key));
}

/** Keys and values of a tree of numbers (ISO 32000-1, 7.9.7), in its order. */
function listBelow(node: PdfValue | undefined, part: OpenedPart): [number, PdfValue][] {
  const numbers = findEntry(node, 'Nums');
  const kids = findEntry(node, 'Kids');
  const own: [number, PdfValue][] = [];
  const items = numbers?.type === 'array' ? numbers.items : [];
  for (let at = 0; at + 1 < items.length; at += 2) {
    const [key, value] = [items[at], items[at + 1]];
    if (key?.type === 'word' && value !== undefined) own.push([Number(key.written), value]);
  }
  const below = kids?.type === 'array' ? kids.items.flatMap((kid) => listBelow(part.document.find(kid), part)) : [];
  return [...own, ...below];
}
