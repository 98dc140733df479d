import type { Element, ElementContent } from 'hast';
import type { NameBook } from './name-book.ts';
import { readName } from './read-name.ts';

/**
 * Where names stay as they are: in links, in drawings, in words for voices alone, in the heads of tables, and on cards,
 * which tell of their names themselves and of which a page may have a hundred.
 */
const NO_LINKS_IN_TAGS = new Set(['a', 'svg', 'th', 'button', 'audio']);
const NO_LINKS_IN_CLASSES = new Set(['visually-hidden', 'gesture-card', 'count-words', 'strip-night']);

/**
 * Copies content so that each name of the calendar in it leads to its entry among the names on the page. Only names that
 * are tagged as such are names: words that an author wrote are not touched.
 * @param met Takes up every name that was met, those without a link too.
 */
export function linkNames(nodes: readonly ElementContent[], book: NameBook, met: Set<string>): ElementContent[] {
  return nodes.map((node) => linkNode(node, book, { met, mayLink: true }));
}

interface Walk {
  readonly met: Set<string>;
  readonly mayLink: boolean;
}

function linkNode(node: ElementContent, book: NameBook, walk: Walk): ElementContent {
  if (node.type !== 'element' || node.tagName === 'svg') return node;
  const entry = readName(node, book);
  if (entry !== undefined) {
    walk.met.add(entry.name);
    return walk.mayLink ? wrapInLink(node, entry.id) : node;
  }
  const inside = { ...walk, mayLink: walk.mayLink && mayHoldLinks(node) };
  return { ...node, children: node.children.map((child) => linkNode(child, book, inside)) };
}

function mayHoldLinks({ tagName, properties: { className } }: Element): boolean {
  if (NO_LINKS_IN_TAGS.has(tagName)) return false;
  return !Array.isArray(className) || !className.some((name) => NO_LINKS_IN_CLASSES.has(String(name)));
}

function wrapInLink(name: Element, id: string): Element {
  return {
    type: 'element',
    tagName: 'a',
    properties: { className: ['name-link'], href: `#${id}` },
    children: [name],
  };
}
