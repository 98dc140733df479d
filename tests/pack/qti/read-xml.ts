import { parseXml, XmlElement } from '@rgrove/parse-xml';

/** Parses a document with a reader of its own. Throws where it is not well formed, or not UTF-8. */
export function readXml(content: string | Uint8Array): XmlElement {
  const text = typeof content === 'string' ? content : new TextDecoder('utf-8', { fatal: true }).decode(content);
  const { root } = parseXml(text);
  if (root === null) throw new Error('The document is empty.');
  return root;
}

/** The elements within an element, at any depth, of one name; all when no name is given. */
export function findAll(parent: XmlElement, name?: string): XmlElement[] {
  return listChildren(parent).flatMap((child) => [
    ...(name === undefined || child.name === name ? [child] : []),
    ...findAll(child, name),
  ]);
}

/** The elements right in an element. */
export function listChildren(parent: XmlElement): XmlElement[] {
  return parent.children.filter((child) => child instanceof XmlElement);
}

/** The one element of a name. Throws where there is none, or more. */
export function findOne(parent: XmlElement, name: string): XmlElement {
  const [found, ...more] = findAll(parent, name);
  if (found === undefined || more.length > 0)
    throw new Error(`Expected one ${name}, found ${more.length + (found ? 1 : 0)}.`);
  return found;
}

/** An attribute that must be there. */
export function requireAttribute(element: XmlElement, name: string): string {
  const value = element.attributes[name];
  if (value === undefined) throw new Error(`${element.name} has no ${name}.`);
  return value;
}
