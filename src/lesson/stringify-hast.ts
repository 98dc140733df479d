import type { Comment, Element, Root, RootContent } from 'hast';
import { find, html, svg } from 'property-information';

/** Which names attributes have: those of HTML, or within a drawing those of SVG. */
type Space = 'html' | 'svg';

/** How a property of hast is written as an attribute. */
interface Attribute {
  readonly name: string;
  readonly isBoolean: boolean;
  /** A boolean that may also bear a value, such as `download`. */
  readonly isOverloaded: boolean;
  readonly separator: ' ' | ', ';
}

/** Elements without an end tag: WHATWG HTML, section 13.1.2. */
const VOID_ELEMENTS: ReadonlySet<string> = new Set(
  'area base br col embed hr img input link meta source track wbr'.split(' '),
);

/** Elements of SVG that hold HTML: WHATWG HTML, section 13.2.6 (HTML integration points). */
const HTML_IN_SVG: ReadonlySet<string> = new Set(['desc', 'foreignObject', 'title']);

/**
 * The HTML text of a tree, or of nodes in a row: double quotes, every tag written out, no slash in empty elements.
 * Raw nodes are not let through: their text comes out escaped.
 * Written by hand because a general writer, which asks at every node what it may leave out, took a tenth of a build.
 */
export function stringifyHast(tree: Root | readonly RootContent[]): string {
  const parts: string[] = [];
  for (const node of 'type' in tree ? tree.children : tree) writeNode(parts, node, 'html', false);
  return parts.join('');
}

function writeNode(parts: string[], node: RootContent, space: Space, isCode: boolean): void {
  switch (node.type) {
    case 'element':
      writeElement(parts, node, space);
      return;
    case 'comment':
      parts.push(`<!--${escapeComment(node)}-->`);
      return;
    case 'doctype':
      parts.push('<!doctype html>');
      return;
    default:
      // Text, and what a tree made elsewhere may hold: raw nodes have a value too, other kinds none.
      if (!('value' in node))
        throw new Error(`A page cannot hold a node of the kind \`${String(Object(node).type)}\`.`);
      parts.push(isCode ? node.value : escapeText(node.value));
  }
}

function writeElement(parts: string[], { tagName, properties, children }: Element, outer: Space): void {
  const space = tagName === 'svg' ? 'svg' : outer;
  parts.push('<', tagName);
  for (const name in properties) writeProperty(parts, name, properties[name], space);
  parts.push('>');
  if (children.length === 0 && outer === 'html' && VOID_ELEMENTS.has(tagName)) return;
  const inner = space === 'svg' && HTML_IN_SVG.has(tagName) ? 'html' : space;
  const isCode = tagName === 'style' || tagName === 'script';
  for (const child of children) writeNode(parts, child, inner, isCode);
  parts.push('</', tagName, '>');
}

function writeProperty(parts: string[], property: string, given: Element['properties'][string], space: Space): void {
  if (given === null || given === undefined) return;
  const { name, isBoolean, isOverloaded, separator } = findAttribute(property, space);
  const isBare = given === name || given === '';
  let value = given;
  if (isOverloaded && isBare) value = true;
  else if ((isBoolean || isOverloaded) && (isBare || typeof given !== 'string')) value = Boolean(given);
  if (value === false || Number.isNaN(value)) return;
  parts.push(' ', name);
  if (value === true) return;
  const text = Array.isArray(value) ? value.join(separator).trim() : String(value);
  parts.push('="', escapeValue(text), '"');
}

const known: Readonly<Record<Space, Map<string, Attribute>>> = { html: new Map(), svg: new Map() };

/** The attribute of a property, looked up once: pages have a few dozen different ones, thousands of times. */
function findAttribute(property: string, space: Space): Attribute {
  const found = known[space].get(property);
  if (found !== undefined) return found;
  const { attribute, boolean, overloadedBoolean, commaSeparated } = find(space === 'svg' ? svg : html, property);
  const made: Attribute = {
    name: attribute.replace(/[\0\t\n\f\r "&'/<=>`]/g, encode),
    isBoolean: boolean,
    isOverloaded: overloadedBoolean,
    separator: commaSeparated ? ', ' : ' ',
  };
  known[space].set(property, made);
  return made;
}

function escapeText(value: string): string {
  return /[<&]/.test(value) ? value.replace(/[<&]/g, encode) : value;
}

function escapeValue(value: string): string {
  return /[\0"&'`]/.test(value) ? value.replace(/[\0"&'`]/g, encode) : value;
}

/** Whatever could end the comment, or is no comment: WHATWG HTML, section 13.1.6. */
function escapeComment({ value }: Comment): string {
  return value.replace(/^>|^->|<!--|-->|--!>|<!-$/g, (found) => found.replace(/[<>]/g, encode));
}

/** A sign as a reference by its number: WHATWG HTML, section 13.1.4. */
function encode(sign: string): string {
  return `&#x${sign.charCodeAt(0).toString(16).toUpperCase()};`;
}
