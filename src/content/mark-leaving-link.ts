import type { Element, ElementContent } from 'hast';
import type { Labels } from './labels.ts';

/** Addresses of the web and of mail; schemes may be written in capitals (RFC 3986, section 3.1). */
const LEAVES = /^(?:(https?)|(mailto)):/i;

/** Class of the words that say that a link leaves: on paper the address stands in their place. */
export const LEAVING_WORDS_CLASS = 'leaving-words';

/**
 * A link that says that it leads out of the pack: in words at its end, so that voices read them with it, and on paper by
 * its address, unless its own words are the address already. A link within the pack comes back as it is.
 */
export function markLeavingLink(link: Element, labels: Labels): Element {
  const href = String(link.properties['href'] ?? '');
  const [leaves, web] = LEAVES.exec(href) ?? [];
  if (leaves === undefined) return link;
  const words = labels.text(web === undefined ? 'link-writes-mail' : 'link-leaves');
  const showsAddress =
    href.replace(/^mailto:/i, '') ===
    readText(link.children)
      .trim()
      .replace(/^mailto:/i, '');
  return {
    ...link,
    properties: { ...link.properties, className: showsAddress ? ['leaves', 'shows-address'] : ['leaves'] },
    children: [
      ...link.children,
      {
        type: 'element',
        tagName: 'span',
        properties: { className: [LEAVING_WORDS_CLASS], lang: labels.language },
        // With its space, so that on paper none is left where the words are not shown.
        children: [{ type: 'text', value: ` ${words}` }],
      },
    ],
  };
}

function readText(nodes: readonly ElementContent[]): string {
  return nodes
    .map((node) => (node.type === 'text' ? node.value : node.type === 'element' ? readText(node.children) : ''))
    .join('');
}
