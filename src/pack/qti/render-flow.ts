import type { Element, ElementContent, Properties } from 'hast';
import { LEAVING_WORDS_CLASS } from '../../content/mark-leaving-link.ts';
import type { PictureStore } from './picture-store.ts';
import { type XmlAttributes, type XmlContent, xmlElement } from './xml-element.ts';

/** Elements of HTML that stand in a line of text; the schema of items knows them by the same names. */
const INLINE: ReadonlySet<string> = new Set([
  ...['a', 'abbr', 'b', 'bdi', 'bdo', 'br', 'cite', 'code', 'dfn', 'em', 'i', 'kbd', 'q', 'samp', 'small', 'span'],
  ...['strong', 'sub', 'sup', 'var'],
]);

/** Blocks that hold lines of text alone. */
const LINES: ReadonlySet<string> = new Set(['h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'p', 'pre']);

/** Blocks that hold others. */
const BLOCKS: ReadonlySet<string> = new Set([
  ...['blockquote', 'caption', 'div', 'figcaption', 'figure', 'hr', 'li', 'ol', 'table', 'tbody', 'td', 'tfoot', 'th'],
  ...['thead', 'tr', 'ul'],
]);

/** Elements whose text no reader sees. */
const SILENT: ReadonlySet<string> = new Set(['input', 'script', 'style', 'template']);

/**
 * A tree of a page as content of an item: the elements that the schema of QTI 3.0 knows, with languages, directions and
 * links to the web. Of other elements the text stays, and of pictures a file in the package with its text alternative.
 * There are no styles in an item, and so no classes.
 */
export function renderFlow(content: readonly ElementContent[], pictures: PictureStore): XmlContent[] {
  return content.flatMap((node) => renderNode(node, pictures, true));
}

/** The same as blocks, for places that hold no bare text: one paragraph where it is a line of text, else one division. */
export function renderBlock(content: readonly ElementContent[], pictures: PictureStore): XmlContent[] {
  const inside = renderFlow(content, pictures);
  const isLine = !inside.some((each) => typeof each !== 'string' && isBlockName(each.name));
  return inside.length === 0 ? [] : [xmlElement(isLine ? 'p' : 'div', {}, inside)];
}

function isBlockName(name: string): boolean {
  return LINES.has(name) || BLOCKS.has(name);
}

function renderNode(node: ElementContent, pictures: PictureStore, holdsBlocks: boolean): XmlContent[] {
  if (node.type === 'text') return [node.value];
  if (node.type !== 'element' || SILENT.has(node.tagName)) return [];
  const { tagName, properties, children } = node;
  // An item is in no pack that a link could leave.
  if (hasClass(properties, LEAVING_WORDS_CLASS)) return [];
  if (tagName === 'svg') return [renderDrawing(node, pictures)];
  if (tagName === 'img') return [renderPicture(properties, pictures)];
  if (tagName === 'ol' && properties['start'] !== undefined) return renderNumbered(node, pictures, holdsBlocks);
  const isBlock = isBlockName(tagName);
  const isKept = isBlock ? holdsBlocks : INLINE.has(tagName) && (tagName !== 'a' || leadsToTheWeb(properties));
  const inside = children.flatMap((child) =>
    renderNode(child, pictures, holdsBlocks && (BLOCKS.has(tagName) || !isKept)),
  );
  if (isKept) return [xmlElement(tagName, convertProperties(tagName, properties), inside)];
  return isBlock ? [' ', ...inside, ' '] : inside;
}

/** The schema's lists always count from one: a list that does not is written as lines with its own numbers. */
function renderNumbered({ properties, children }: Element, pictures: PictureStore, holdsBlocks: boolean): XmlContent[] {
  const items = children.filter((child) => child.type === 'element');
  const lines = items.map((item, index) => {
    const number = `${Number(properties['start']) + index}. `;
    const inside = item.children.flatMap((child) => renderNode(child, pictures, holdsBlocks));
    return holdsBlocks ? xmlElement('div', {}, [number, ...inside]) : [' ', number, ...inside];
  });
  return lines.flat();
}

function hasClass({ className }: Properties, name: string): boolean {
  return Array.isArray(className) && className.includes(name);
}

function leadsToTheWeb({ href }: Properties): boolean {
  return /^(?:https?|mailto):/i.test(String(href));
}

function convertProperties(tagName: string, properties: Properties): XmlAttributes {
  const read = (name: string) => (properties[name] === undefined ? undefined : String(properties[name]));
  const isCell = tagName === 'td' || tagName === 'th';
  return {
    ...nameLanguage(read('lang')),
    dir: read('dir'),
    ...(tagName === 'a' ? { href: read('href') } : {}),
    ...(isCell ? { align: read('align'), colspan: read('colSpan'), rowspan: read('rowSpan') } : {}),
    ...(tagName === 'th' ? { scope: read('scope') } : {}),
  };
}

/** The attribute of XML for tools that read XML, and that of HTML for those that hand the content to a browser. */
function nameLanguage(language: string | undefined): XmlAttributes {
  return { 'xml:lang': language, lang: language };
}

function renderPicture(properties: Properties, pictures: PictureStore): XmlContent {
  const { path } = pictures.addFile(String(properties['src']));
  return xmlElement('img', { src: path, alt: String(properties['alt'] ?? '') });
}

function renderDrawing(drawing: Element, pictures: PictureStore): XmlContent {
  const { path, width, height } = pictures.addDrawing(drawing);
  const { words, language } = readAlternative(drawing);
  return xmlElement('img', { src: path, alt: words, ...nameLanguage(language), width, height });
}

/** What a drawing says in words: its label, else its title; nothing where it is hidden from those who do not see it. */
function readAlternative({ properties, children }: Element): { words: string; language: string | undefined } {
  const title = children.find((child) => child.type === 'element' && child.tagName === 'title');
  const [text] = title?.type === 'element' ? title.children : [];
  const lang = title?.type === 'element' ? title.properties['lang'] : properties['lang'];
  const words = properties['ariaLabel'] ?? (text?.type === 'text' ? text.value : '');
  return { words: String(words), language: lang === undefined ? undefined : String(lang) };
}
