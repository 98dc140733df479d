import type { ElementContent } from 'hast';

/** Whether an element of a class stands anywhere in a tree. */
export function holdsClass(content: readonly ElementContent[], name: string): boolean {
  return content.some((node) => {
    if (node.type !== 'element') return false;
    const { className } = node.properties;
    return (Array.isArray(className) && className.includes(name)) || holdsClass(node.children, name);
  });
}
