import { collectRuns, isLetter, type MarkupRun } from './collect-runs.ts';
import { type MarkupTag, parseTag } from './parse-tag.ts';

export interface MarkupElement {
  readonly tag: MarkupTag;
  /** Index of the element around it; -1 for the outermost. */
  readonly parent: number;
  readonly at: number;
  /** Whether it or an element around it is not shown. */
  readonly hidden: boolean;
}

/** What is in the file and on no page. */
export interface MarkupAside {
  readonly kind: 'comment' | 'script' | 'style' | 'instruction';
  readonly text: string;
  readonly at: number;
  /** Index of the element: of the script or style itself, else of the one around. */
  readonly element: number;
}

/** An HTML or SVG file taken apart. */
export interface Markup {
  readonly elements: readonly MarkupElement[];
  readonly runs: readonly MarkupRun[];
  /** The same text once more where a tag stands between two letters: parted there. */
  readonly parted: readonly MarkupRun[];
  readonly asides: readonly MarkupAside[];
}

/** Start tags that were met, by what is written between `<` and `>`: most are written many times. */
export type KnownTags = Map<string, MarkupTag>;

/** Elements without an end tag. */
const VOID: ReadonlySet<string> = new Set(
  'area base br col embed hr img input link meta param source track wbr'.split(' '),
);

/** The inside of a tag; quoted values may hold `>`. */
const TAG_INSIDE = /[^"'>]*(?:"[^"]*"[^"'>]*|'[^']*'[^"'>]*)*(?=>)/y;

/**
 * Takes a file apart, well formed or not. A reader of its own: what it does not understand counts as text, so that
 * nothing in the file goes unread.
 * @param known Tags that were met in other files; new ones are added.
 */
export function readMarkup(source: string, known: KnownTags): Markup {
  const elements: MarkupElement[] = [];
  const asides: MarkupAside[] = [];
  const text = collectRuns();
  const open: number[] = [];
  /** Index of the innermost open element. */
  let inside = -1;
  let at = 0;
  for (let tagAt = source.indexOf('<'); tagAt !== -1; tagAt = source.indexOf('<', at)) {
    if (tagAt > at) text.add(source.slice(at, tagAt), at, inside);
    at = readTag(tagAt);
  }
  if (at < source.length) text.add(source.slice(at), at, inside);
  text.end();
  return { elements, runs: text.runs, parted: text.parted, asides };

  /** @returns Where what follows the tag begins. */
  function readTag(tagAt: number): number {
    const next = source.charCodeAt(tagAt + 1);
    if (isLetter(next)) return readStart(tagAt);
    if (next === SLASH) return readEnd(tagAt);
    if (next === EXCLAMATION || next === QUESTION) return readAside(tagAt);
    text.add('<', tagAt, inside);
    return tagAt + 1;
  }

  function readStart(tagAt: number): number {
    TAG_INSIDE.lastIndex = tagAt + 1;
    const written = TAG_INSIDE.exec(source)?.[0];
    // A tag that does not end before the file does is all text.
    if (written === undefined) {
      text.add(source.slice(tagAt), tagAt, inside);
      return source.length;
    }
    const tag = known.get(written) ?? parseTag(written);
    known.set(written, tag);
    text.meet(tag.name);
    const hidden = tag.hides || (elements[inside]?.hidden ?? false);
    const index = elements.push({ tag, parent: inside, at: tagAt, hidden }) - 1;
    const end = tagAt + written.length + 2;
    if (tag.name === 'script' || tag.name === 'style') return readRaw(tag.name, end, index);
    if (!VOID.has(tag.name) && !(tag.selfClosing && isInDrawing(tag.name))) {
      open.push(index);
      inside = index;
    }
    return end;
  }

  function readRaw(name: 'script' | 'style', from: number, element: number): number {
    const close = name === 'script' ? /<\/script[\s/>]/gi : /<\/style[\s/>]/gi;
    close.lastIndex = from;
    const closeAt = close.exec(source)?.index ?? source.length;
    asides.push({ kind: name, text: source.slice(from, closeAt), at: from, element });
    const end = source.indexOf('>', closeAt);
    return end === -1 ? source.length : end + 1;
  }

  function readEnd(tagAt: number): number {
    const end = source.indexOf('>', tagAt);
    const stop = end === -1 ? source.length : end;
    const name = source
      .slice(tagAt + 2, stop)
      .trim()
      .toLowerCase();
    text.meet(name);
    if (elements[inside]?.tag.name === name) open.pop();
    else {
      const level = open.findLastIndex((index) => elements[index]?.tag.name === name);
      if (level !== -1) open.length = level;
    }
    inside = open.at(-1) ?? -1;
    return stop + 1;
  }

  function readAside(tagAt: number): number {
    const [begin, finish] = source.startsWith('<!--', tagAt)
      ? ['<!--', '-->']
      : source.startsWith('<![CDATA[', tagAt)
        ? ['<![CDATA[', ']]>']
        : ['<!', '>'];
    const from = tagAt + begin.length;
    const found = source.indexOf(finish, from);
    const stop = found === -1 ? source.length : found;
    const words = source.slice(from, stop);
    if (begin === '<![CDATA[') text.addPlain(words, from, inside);
    else asides.push({ kind: begin === '<!--' ? 'comment' : 'instruction', text: words, at: from, element: inside });
    return Math.min(stop + finish.length, source.length);
  }

  function isInDrawing(name: string): boolean {
    return name === 'svg' || open.some((index) => elements[index]?.tag.name === 'svg');
  }
}

const SLASH = 0x2f;
const EXCLAMATION = 0x21;
const QUESTION = 0x3f;
