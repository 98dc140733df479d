import type { Element, ElementContent, Properties } from 'hast';

/**
 * Makes an SVG element. Written out because a score has hundreds of them, and a general builder that parses selectors
 * and looks up each attribute takes about ten times as long.
 * @param tagName as SVG spells it
 * @param properties named as in hast (`strokeWidth`, `className`), already checked: nothing is escaped or left out here
 * @param children text may be given as a string
 */
export function svgElement(
  tagName: string,
  properties: Readonly<Record<string, string | number | string[]>>,
  children: readonly (ElementContent | string)[] = [],
): Element {
  return {
    type: 'element',
    tagName,
    properties: toProperties(properties),
    children: children.map((child) => (typeof child === 'string' ? { type: 'text', value: child } : child)),
  };
}

/** Numbers become text: hast types the attributes of SVG as strings. */
function toProperties(given: Readonly<Record<string, string | number | string[]>>): Properties {
  const properties: Properties = {};
  for (const [name, value] of Object.entries(given)) {
    properties[name] = typeof value === 'number' ? String(value) : value;
  }
  return properties;
}
