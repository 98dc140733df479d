import type { Element } from 'hast';
import { svgElement } from './svg-element.ts';

const shared = new WeakSet<Element>();

/**
 * Marks an element of SVG as one that stands in many trees and is never changed, so that its text need be written only
 * once for a pack, and once on a page that holds a `partStore`. It holds no raw node, and no id of its own.
 */
export function shareElement(element: Element): Element {
  shared.add(element);
  return element;
}

/** Tells whether an element was marked by `shareElement`. */
export function isShared(element: Element): boolean {
  return shared.has(element);
}

/**
 * Stands once on a page, where nothing is laid out by it: shared elements that the page shows more than once are written
 * there, and used from there. The same element for all pages, known by being it; it must not be changed.
 */
export const partStore: Element = svgElement('svg', { className: ['figure-store'], ariaHidden: 'true' });
