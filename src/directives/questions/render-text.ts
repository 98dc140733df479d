import type { ElementContent } from 'hast';
import type { RootContent } from 'mdast';
import type { ResolveContext } from '../definition.ts';

/**
 * Text of one paragraph is a line, not a paragraph. It is unwrapped after rendering: words rendered one by one would
 * get white space between them.
 */
export function renderText(nodes: readonly RootContent[], context: ResolveContext): ElementContent[] {
  const rendered = context.renderPlain(nodes);
  const [only] = rendered;
  if (nodes.length !== 1 || nodes[0]?.type !== 'paragraph' || only?.type !== 'element') return rendered;
  return only.children;
}
