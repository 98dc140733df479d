import type { Element } from 'hast';

const shared = new WeakSet<Element>();

/**
 * Marks an element of SVG as one that stands in many trees and is never changed, so that its text need be written only
 * once. It holds no raw node.
 */
export function shareElement(element: Element): Element {
  shared.add(element);
  return element;
}

/** Tells whether an element was marked by `shareElement`. */
export function isShared(element: Element): boolean {
  return shared.has(element);
}
