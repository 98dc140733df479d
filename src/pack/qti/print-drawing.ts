import type { Element, ElementContent, Properties } from 'hast';
import { find, svg } from 'property-information';
import { printXml } from './print-xml.ts';
import { type XmlAttributes, type XmlContent, xmlElement } from './xml-element.ts';

/** What only a page has a use for: its styles, and words that stand in the text alternative. */
const PAGE_ONLY: ReadonlySet<string> = new Set(['className', 'role', 'lang', 'xmlns']);
const WORDS: ReadonlySet<string> = new Set(['title', 'desc']);

/**
 * A drawing of a page as the text of an SVG file: in the ink that stands in its own attributes, without a word.
 * @throws Error when the drawing uses a part that stands elsewhere on its page.
 */
export function printDrawing(drawing: Element): string {
  requireWhole(drawing);
  const root = convert(drawing);
  return printXml({ ...root, attributes: { xmlns: 'http://www.w3.org/2000/svg', ...root.attributes } });
}

function convert({ tagName, properties, children }: Element) {
  return xmlElement(tagName, convertProperties(properties), children.flatMap(convertNode));
}

function convertNode(node: ElementContent): XmlContent[] {
  if (node.type === 'text') return [node.value];
  return node.type === 'element' && !WORDS.has(node.tagName) ? [convert(node)] : [];
}

function convertProperties(properties: Properties): XmlAttributes {
  const attributes: Record<string, string> = {};
  for (const [name, value] of Object.entries(properties)) {
    if (value === null || value === undefined || PAGE_ONLY.has(name) || name.startsWith('aria')) continue;
    attributes[find(svg, name).attribute] = Array.isArray(value) ? value.join(' ') : String(value);
  }
  return attributes;
}

function requireWhole(drawing: Element): void {
  const ids = new Set<string>();
  const used: string[] = [];
  const visit = ({ tagName, properties, children }: Element): void => {
    if (properties['id'] !== undefined) ids.add(String(properties['id']));
    if (tagName === 'use') used.push(String(properties['href']).slice(1));
    for (const child of children) if (child.type === 'element') visit(child);
  };
  visit(drawing);
  const missing = used.find((id) => !ids.has(id));
  if (missing !== undefined) throw new Error(`A drawing of a question uses "${missing}", which is not part of it.`);
}
