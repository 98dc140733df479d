import type { Element, ElementContent, Properties } from 'hast';
import { isShared } from '../drawing/shared-elements.ts';

/** Attributes that could say what an author ticked, typed or counted. */
const TELLING: ReadonlySet<string> = new Set(['checked', 'selected', 'value']);

/**
 * A deep copy of a tree that shares nothing with it but drawings which are marked as shared and never change. Left out
 * are source positions and data, which would tell in which order the author wrote the options, boxes to tick and
 * attributes of state, which would tell the right one, and comments.
 */
export function copyContent(content: readonly ElementContent[]): ElementContent[] {
  const copies: ElementContent[] = [];
  for (const node of content) {
    if (node.type === 'text') copies.push({ type: 'text', value: node.value });
    else if (node.type === 'element' && node.tagName !== 'input') copies.push(copyElement(node));
  }
  return copies;
}

/** Every tree of every paper and key comes through here, so it takes the shortest way. */
function copyElement(element: Element): Element {
  if (isShared(element)) return element;
  const { tagName, properties, children } = element;
  return { type: 'element', tagName, properties: copyProperties(properties), children: copyContent(children) };
}

function copyProperties(properties: Properties): Properties {
  const copy: Properties = {};
  for (const name in properties) {
    if (TELLING.has(name) || name.startsWith('data')) continue;
    const value = properties[name];
    copy[name] = Array.isArray(value) ? [...value] : value;
  }
  return copy;
}
