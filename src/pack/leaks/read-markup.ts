import { decodeReferences } from './decode-text.ts';

/** An attribute with its value decoded. */
export interface MarkupAttribute {
  readonly name: string;
  readonly value: string;
  /** Where its name begins, counted from the `<` of its tag. */
  readonly offset: number;
}

/** A start tag as written: the same for all elements that are written the same. */
export interface MarkupTag {
  /** Name in small letters. */
  readonly name: string;
  /** Without those of drawings that hold nothing but numbers and colours. */
  readonly attributes: readonly MarkupAttribute[];
  /** Whether an attribute, or its being a template, keeps it from being shown. */
  readonly hides: boolean;
  readonly selfClosing: boolean;
}

export interface MarkupElement {
  readonly tag: MarkupTag;
  /** Index of the element around it; -1 for the outermost. */
  readonly parent: number;
  readonly at: number;
  /** Whether it or an element around it is not shown. */
  readonly hidden: boolean;
}

/** Text that no tag parts, or only tags within a line. */
export interface MarkupRun {
  readonly text: string;
  readonly at: number;
  /** Index of the element in which it begins; -1 outside of all. */
  readonly element: number;
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

/** Tags that stand within a line of text. */
const INLINE: ReadonlySet<string> = new Set(
  'a abbr b bdi bdo cite code data del dfn em font i ins kbd label mark q s samp small span strong sub sup time tspan u var wbr'.split(
    ' ',
  ),
);

/** Elements without an end tag. */
const VOID: ReadonlySet<string> = new Set(
  'area base br col embed hr img input link meta param source track wbr'.split(' '),
);

/** The inside of a tag; quoted values may hold `>`. */
const TAG_INSIDE = /[^"'>]*(?:"[^"]*"[^"'>]*|'[^']*'[^"'>]*)*(?=>)/y;

const ATTRIBUTE = /([^\s=/"'][^\s=/]*)(?:\s*=\s*(?:"([^"]*)"|'([^']*)'|([^\s"'][^\s]*)))?/g;

/** Numbers with single letters between them, a colour, or a word that every drawing uses. */
const DRAWING_VALUE =
  '(?:[a-zA-Z]?[-+\\d\\s.,]*(?:[zZ]?[a-zA-Z][-+\\d\\s.,]+)*[zZ]?|#[0-9a-fA-F]{3,8}|none|round|butt|stroke|evenodd|(?:translate|scale|rotate|matrix)\\([-+\\d\\s.,e]*\\))';
const DRAWING_NAME =
  '(?:d|[xyr]|[xy][12]|[cr][xy]|d[xy]|fx|fy|width|height|points|transform|viewBox|fill|stroke|(?:fill|stroke|paint)-[a-z]+|opacity|offset|pathLength)';

/** The attributes of an element that is nothing but drawn. */
const DRAWING = new RegExp(`^(?:\\s+${DRAWING_NAME}="${DRAWING_VALUE}")*\\s*/?$`);

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

function isLetter(code: number): boolean {
  const small = code | 0x20;
  return small >= 0x61 && small <= 0x7a;
}

/** @param written What stands between `<` and `>`. */
function parseTag(written: string): MarkupTag {
  const nameEnd = written.search(/[\s/]/);
  const name = (nameEnd === -1 ? written : written.slice(0, nameEnd)).toLowerCase();
  const rest = nameEnd === -1 ? '' : written.slice(nameEnd);
  const attributes = rest === '' || DRAWING.test(rest) ? [] : parseAttributes(rest, nameEnd + 1);
  return { name, attributes, hides: name === 'template' || attributes.some(hides), selfClosing: rest.endsWith('/') };
}

function parseAttributes(text: string, offset: number): MarkupAttribute[] {
  return [...text.matchAll(ATTRIBUTE)].map(({ 1: name = '', 2: double, 3: single, 4: bare, index }) => ({
    name: name.toLowerCase(),
    value: decodeReferences(double ?? single ?? bare ?? ''),
    offset: offset + index,
  }));
}

function hides({ name, value }: MarkupAttribute): boolean {
  if (name === 'hidden') return true;
  return (
    name === 'style' && /display\s*:\s*none|visibility\s*:\s*hidden|opacity\s*:\s*0|font-size\s*:\s*0/i.test(value)
  );
}

/** Puts text together over tags within a line. */
function collectRuns() {
  const runs: MarkupRun[] = [];
  const parted: MarkupRun[] = [];
  let run = '';
  /** The run with a space wherever a tag stands between two letters; undefined while there is no such tag. */
  let spaced: string | undefined;
  let tagSeen = false;
  let start = 0;
  let startElement = -1;
  const end = () => {
    if (run !== '') {
      runs.push({ text: run, at: start, element: startElement });
      if (spaced !== undefined) parted.push({ text: spaced, at: start, element: startElement });
    }
    run = '';
    spaced = undefined;
    tagSeen = false;
  };
  const addPlain = (text: string, at: number, element: number) => {
    if (run === '') {
      const blank = text.search(/\S/);
      if (blank === -1) return;
      start = at + blank;
      startElement = element;
    } else if (tagSeen && isSolid(run.charCodeAt(run.length - 1)) && isSolid(text.charCodeAt(0))) {
      spaced = `${spaced ?? run} ${text}`;
    } else if (spaced !== undefined) spaced += text;
    tagSeen = false;
    run += text;
  };
  return {
    runs,
    parted,
    end,
    addPlain,
    /** Text with character references. */
    add: (raw: string, at: number, element: number) => addPlain(decodeReferences(raw), at, element),
    /** A start or an end tag. */
    meet(name: string): void {
      if (INLINE.has(name)) tagSeen = true;
      else end();
    },
  };
}

/** Whether a character is a letter, a digit or none of ASCII. */
function isSolid(code: number): boolean {
  return isLetter(code) || (code >= 0x30 && code <= 0x39) || code > 0x7f;
}
