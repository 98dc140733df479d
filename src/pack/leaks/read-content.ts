import type { ElementContent } from 'hast';

/** Elements that stand within a line of text; around all others a line ends. */
const INLINE: ReadonlySet<string> = new Set(
  'a abbr b bdi bdo br cite code del em i ins kbd mark q s small span strong sub sup time tspan u'.split(' '),
);

/** Elements whose text says a drawing to who does not see it. */
const DESCRIBING: ReadonlySet<string> = new Set(['title', 'desc', 'metadata']);

/** The text of a tree, a line for each block, with what is said of drawings in elements of their own. */
export function readContentText(content: readonly ElementContent[]): string {
  return readText(content, () => true);
}

/** The same without what is said of drawings: what all readers see. */
export function readShownText(content: readonly ElementContent[]): string {
  return readText(content, (tagName) => !DESCRIBING.has(tagName));
}

/** What is said of drawings in elements of their own, each by itself. */
export function listDescriptions(content: readonly ElementContent[]): string[] {
  return content.flatMap((node) => {
    if (node.type !== 'element') return [];
    return DESCRIBING.has(node.tagName) ? [readContentText(node.children)] : listDescriptions(node.children);
  });
}

function readText(content: readonly ElementContent[], isWanted: (tagName: string) => boolean): string {
  let text = '';
  for (const node of content) {
    if (node.type === 'text') text += node.value;
    else if (node.type === 'element' && isWanted(node.tagName)) {
      const inner = readText(node.children, isWanted);
      text += INLINE.has(node.tagName) ? inner : `\n${inner}\n`;
    }
  }
  return text;
}

/** What a tree says that is not its text: attributes of a picture or of any other element. */
export interface ContentAttribute {
  /** As hast has it, such as `ariaLabel`. */
  readonly name: string;
  readonly value: string;
}

/** All attributes of a tree that hold text, in order. */
export function* listContentAttributes(content: readonly ElementContent[]): Generator<ContentAttribute> {
  for (const node of content) {
    if (node.type !== 'element') continue;
    for (const [name, value] of Object.entries(node.properties)) {
      if (typeof value === 'string' || typeof value === 'number') yield { name, value: String(value) };
      else if (Array.isArray(value)) yield { name, value: value.join(' ') };
    }
    yield* listContentAttributes(node.children);
  }
}

/** Elements that set parts of a page apart. */
const PARTS: ReadonlySet<string> = new Set(['section', 'div', 'article', 'details', 'blockquote']);

/** What stands in the notes for the teacher on a lesson's page. */
export function listTeachersNotes(body: readonly ElementContent[]): (readonly ElementContent[])[] {
  return body.flatMap((node) => {
    if (node.type !== 'element') return [];
    const { className } = node.properties;
    const isNote = node.tagName === 'aside' && Array.isArray(className) && className.includes('teacher-note');
    if (isNote) return [node.children];
    return PARTS.has(node.tagName) ? listTeachersNotes(node.children) : [];
  });
}
