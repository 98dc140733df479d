import type { Element, ElementContent } from 'hast';
import rehypeStringify from 'rehype-stringify';
import { unified } from 'unified';

/** All elements in a tree, in order, the tree itself first. */
export const listElements = (tree: Element): Element[] => [
  tree,
  ...tree.children.flatMap((child) => (child.type === 'element' ? listElements(child) : [])),
];

export const findByClass = (tree: Element, name: string): Element[] =>
  listElements(tree).filter((element) => {
    const { className } = element.properties;
    return Array.isArray(className) && className.includes(name);
  });

export const textOf = (node: ElementContent): string =>
  node.type === 'text' ? node.value : node.type === 'element' ? node.children.map(textOf).join('') : '';

export const attribute = (element: Element | undefined, name: string): string => {
  const value = element?.properties[name];
  if (value === undefined || value === null) throw new Error(`no attribute ${name}`);
  return String(value);
};

const stringifier = unified().use(rehypeStringify);

/** The bytes as the pack writes them. */
export const toHtml = (...children: ElementContent[]): string => stringifier.stringify({ type: 'root', children });
