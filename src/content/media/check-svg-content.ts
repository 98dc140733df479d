import type { XmlPiece } from './scan-xml.ts';

/** What may not stand in a picture: words that follow "holds". */
export interface ForbiddenContent {
  readonly found: string;
  readonly remedy: string;
}

/** Elements that run, load, lead away or move, by their names without prefix and in lower case. */
const FORBIDDEN_ELEMENTS: ReadonlyMap<string, string> = new Map([
  ...['script', 'handler', 'listener'].map((name) => [name, 'a script'] as const),
  ...['foreignobject', 'iframe', 'object', 'embed', 'link', 'meta', 'base', 'form'].map(
    (name) => [name, 'a piece of a web page'] as const,
  ),
  ...['audio', 'video', 'canvas'].map((name) => [name, 'sound or film'] as const),
  ...['set', 'animate', 'animatecolor', 'animatemotion', 'animatetransform', 'discard'].map(
    (name) => [name, 'something that moves'] as const,
  ),
]);

/** Namespaces whose elements are web pages or formulas in the picture, whatever their names. */
const FORBIDDEN_NAMESPACES: readonly string[] = [
  'http://www.w3.org/1999/xhtml',
  'http://www.w3.org/1998/Math/MathML',
  'http://www.w3.org/2001/xml-events',
];

const LEADS_OUT = 'something from outside the file';
const EMBED = 'save the picture as plain SVG with everything inside the file, or as PNG';
const TAKE_OUT = 'take it out, or save the picture as PNG';

/** Attributes whose value is an address. */
const ADDRESSES: ReadonlySet<string> = new Set(['href', 'src', 'data', 'action', 'formaction', 'poster']);

/** Attributes that style nothing; those with a prefix are notes of the program that wrote the file. */
const NO_STYLE = /:|^(?:id|class|lang|d|points|data-.*|aria-.*)$/;

/** Bitmaps that stand in the file itself. SVG in SVG is refused: it would have to be looked through likewise. */
const INSIDE = /^\s*(?:#|data:image\/(?:png|jpe?g)[;,])/i;

/**
 * What an opening tag holds that a still picture of its own does not need. Browsers run no script of a picture shown in
 * a page; but a pack's pictures can be opened by themselves, and then they are pages.
 */
export function findForbiddenTag({ name, attributes }: XmlPiece & { kind: 'open' }): ForbiddenContent | undefined {
  const element = FORBIDDEN_ELEMENTS.get(localName(name));
  if (element !== undefined) return { found: `${element} (\`<${name}>\`)`, remedy: TAKE_OUT };
  for (const { name: attribute, value } of attributes) {
    const local = localName(attribute);
    if (local.startsWith('on')) return { found: `a script (\`${attribute}\`)`, remedy: TAKE_OUT };
    if (isNamespace(attribute) && FORBIDDEN_NAMESPACES.includes(value.trim())) {
      return { found: 'a piece of a web page', remedy: TAKE_OUT };
    }
    if (attribute === 'xml:base' || (ADDRESSES.has(local) && !INSIDE.test(value))) {
      return { found: `${LEADS_OUT} (\`${attribute}\`)`, remedy: EMBED };
    }
    const style = NO_STYLE.test(attribute) ? undefined : findForbiddenStyle(value);
    if (style !== undefined) return style;
  }
  return undefined;
}

/** Whether an attribute declares a namespace. */
export function isNamespace(attribute: string): boolean {
  return attribute === 'xmlns' || attribute.startsWith('xmlns:');
}

/** The name without its prefix, in lower case. */
export function localName(name: string): string {
  return name.slice(name.lastIndexOf(':') + 1).toLowerCase();
}

/** What a style rule, or the value of an attribute like `fill`, holds that leads out of the file, or moves. */
export function findForbiddenStyle(text: string): ForbiddenContent | undefined {
  // A backslash could write `url` in other letters (CSS Syntax Level 3, section 4.3.7).
  if (text.includes('\\')) return { found: 'a style with `\\` in it', remedy: EMBED };
  if (/@(?:-\w+-)?keyframes/i.test(text)) {
    return { found: 'something that moves (`@keyframes`)', remedy: TAKE_OUT };
  }
  const leadsOut =
    [...text.matchAll(/url\(\s*["']?(.*?)(?:\)|$)/gis)].some(([, address = '']) => !INSIDE.test(address)) ||
    /@import|(?:image|image-set|src)\(/i.test(text) ||
    /javascript:/i.test(text);
  return leadsOut ? { found: `${LEADS_OUT} (in a style)`, remedy: EMBED } : undefined;
}
