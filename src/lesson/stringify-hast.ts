import type { Element, ElementContent, Root, RootContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';
import { isShared } from '../drawing/shared-elements.ts';

/**
 * Standard HTML as people write it: double quotes, every tag written out, no slash in empty elements. Raw nodes are let
 * through here because `replaceShared` has turned every one that was in the tree into plain text.
 */
const STRINGIFIER = unified()
  .use(rehypeStringify, {
    quote: '"',
    omitOptionalTags: false,
    closeSelfClosing: false,
    allowParseErrors: false,
    allowDangerousHtml: true,
  })
  .freeze();

/** The text of each shared element of SVG, written once. */
const sharedTexts = new WeakMap<Element, string>();

/** The HTML text of a tree, or of nodes in a row. Raw nodes are not let through: their text comes out escaped. */
export function stringifyHast(tree: Root | readonly RootContent[]): string {
  const children: readonly RootContent[] = 'type' in tree ? tree.children : tree;
  return STRINGIFIER.stringify({ type: 'root', children: replaceShared(children) });
}

/**
 * Puts its text in the place of each shared element: a pack shows the same drawings on many pages. Nothing that is given
 * is changed; what holds no shared element and no raw node is used as it is.
 */
function replaceShared<Node extends RootContent>(nodes: readonly Node[]): (Node | ElementContent)[] {
  return nodes.map((node): Node | ElementContent => {
    if (node.type === 'raw') return { type: 'text', value: node.value };
    if (node.type !== 'element') return node;
    if (isShared(node)) return { type: 'raw', value: textOf(node) };
    const children = replaceShared(node.children);
    return children.every((child, index) => child === node.children[index]) ? node : { ...node, children };
  });
}

function textOf(element: Element): string {
  const known = sharedTexts.get(element);
  if (known !== undefined) return known;
  // Names of attributes are written as SVG has them only inside an `svg`.
  const svg: Element = { type: 'element', tagName: 'svg', properties: {}, children: [element] };
  const text = STRINGIFIER.stringify({ type: 'root', children: [svg] }).slice('<svg>'.length, -'</svg>'.length);
  sharedTexts.set(element, text);
  return text;
}
