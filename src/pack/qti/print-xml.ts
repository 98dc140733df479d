import type { XmlContent, XmlElement } from './xml-element.ts';

/** A whole XML document as text, in UTF-8, with its declaration. Characters that XML cannot hold are left out. */
export function printXml(root: XmlElement): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n${printElement(root)}\n`;
}

function printElement({ name, attributes, children }: XmlElement): string {
  const written = Object.entries(attributes).map(([key, value]) => ` ${key}="${escapeText(value, IN_VALUES)}"`);
  const start = `<${name}${written.join('')}`;
  return children.length === 0 ? `${start}/>` : `${start}>${children.map(printContent).join('')}</${name}>`;
}

function printContent(content: XmlContent): string {
  return typeof content === 'string' ? escapeText(content, IN_TEXTS) : printElement(content);
}

/** What is not read as it stands: marks of XML, and space that a reader would turn into other space. */
const IN_TEXTS = /[&<>\r]/g;
const IN_VALUES = /[&<>"\t\n\r]/g;

/** All that is no character of XML 1.0 (W3C, fifth edition, production 2), halves of surrogate pairs among them. */
const NO_CHARACTER = /[^\t\n\r\u0020-\ud7ff\ue000-\ufffd\u{10000}-\u{10ffff}]/gu;

const NAMED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escapeText(text: string, marks: RegExp): string {
  const reference = (mark: string) => NAMED[mark] ?? `&#x${mark.charCodeAt(0).toString(16).toUpperCase()};`;
  return text.replace(NO_CHARACTER, '').replace(marks, reference);
}
