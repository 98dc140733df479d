import type { Element, ElementContent, Root, RootContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { isShared, partStore } from '../drawing/shared-elements.ts';
import { type PartText, takeOutParts } from './take-out-parts.ts';

/**
 * Standard HTML as people write it: double quotes, every tag written out; only elements of SVG, of which a drawing has
 * hundreds, are closed in their own tag where they hold nothing. Raw nodes are let through here because `replaceShared`
 * has turned every one that was in the tree into plain text.
 */
const STRINGIFIER = unified()
  .use(rehypeStringify, {
    quote: '"',
    omitOptionalTags: false,
    closeSelfClosing: false,
    closeEmptyElements: true,
    tightSelfClosing: true,
    allowParseErrors: false,
    allowDangerousHtml: true,
  })
  .freeze();

/** The text of each shared element of SVG, written once. */
const sharedTexts = new WeakMap<Element, string>();

/**
 * The HTML text of a tree, or of nodes in a row. Raw nodes are not let through: their text comes out escaped. Where the
 * tree has a `partStore`, drawn parts that are shared and written alike stand there once.
 */
export function stringifyHast(tree: Root | readonly RootContent[]): string {
  const children: readonly RootContent[] = 'type' in tree ? tree.children : tree;
  const found: FoundParts = { parts: [], store: undefined };
  const replaced = replaceShared(children, found);
  if (found.store !== undefined) found.store.value = writeStore(takeOutParts(found.parts));
  return STRINGIFIER.stringify({ type: 'root', children: replaced });
}

/** The texts that a tree's shared elements were replaced by, and where a page keeps parts. */
interface FoundParts {
  readonly parts: PartText[];
  store: PartText | undefined;
}

/**
 * Puts its text in the place of each shared element: a pack shows the same drawings on many pages. Nothing that is given
 * is changed; what holds no shared element and no raw node is used as it is.
 */
function replaceShared<Node extends RootContent>(nodes: readonly Node[], found: FoundParts): (Node | ElementContent)[] {
  return nodes.map((node): Node | ElementContent => {
    if (node.type === 'raw') return { type: 'text', value: node.value };
    if (node.type !== 'element') return node;
    if (node === partStore) {
      found.store = { type: 'raw', value: '' };
      return found.store;
    }
    if (isShared(node)) {
      const part: PartText = { type: 'raw', value: textOf(node) };
      found.parts.push(part);
      return part;
    }
    const children = replaceShared(node.children, found);
    return children.every((child, index) => child === node.children[index]) ? node : { ...node, children };
  });
}

function writeStore(parts: string): string {
  return parts === '' ? '' : write({ ...partStore, children: [{ type: 'raw', value: parts }] });
}

function textOf(element: Element): string {
  const known = sharedTexts.get(element);
  if (known !== undefined) return known;
  // Names of attributes are written as SVG has them only inside an `svg`.
  const svg: Element = { type: 'element', tagName: 'svg', properties: {}, children: [element] };
  const text = write(svg).slice('<svg>'.length, -'</svg>'.length);
  sharedTexts.set(element, text);
  return text;
}

function write(element: Element): string {
  return STRINGIFIER.stringify({ type: 'root', children: [element] });
}
