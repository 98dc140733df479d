import type { ElementContent } from 'hast';

/** Whether a picture stands anywhere in a tree. */
export function holdsPicture(content: readonly ElementContent[]): boolean {
  return content.some(
    (node) =>
      node.type === 'element' && (node.tagName === 'svg' || node.tagName === 'img' || holdsPicture(node.children)),
  );
}
