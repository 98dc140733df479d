import {
  type ForbiddenContent,
  findForbiddenStyle,
  findForbiddenTag,
  isNamespace,
  localName,
} from './check-svg-content.ts';
import type { MediaFault, Parsed } from './media-fault.ts';
import type { PixelSize } from './parse-png.ts';
import { scanXml, type XmlPiece } from './scan-xml.ts';

const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

/** CSS pixels of each unit of length: CSS Values and Units Level 3, section 6.2. */
const PIXELS: Readonly<Record<string, number>> = {
  '': 1,
  px: 1,
  pt: 4 / 3,
  pc: 16,
  in: 96,
  cm: 96 / 2.54,
  mm: 9.6 / 2.54,
};

const NUMBER = String.raw`[+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?`;
const LENGTH = new RegExp(String.raw`^\s*(${NUMBER})(px|pt|pc|in|cm|mm)?\s*$`, 'i');

/** `<?xml …?>`: XML 1.0, section 2.8. */
const DECLARATION =
  /^xml\s+version\s*=\s*(?:"1\.\d+"|'1\.\d+')(?:\s+encoding\s*=\s*(?:"([\w.-]+)"|'([\w.-]+)'))?(?:\s+standalone\s*=\s*(?:"(?:yes|no)"|'(?:yes|no)'))?\s*$/;
const TARGET = /^[\p{L}_][\p{L}\p{N}\-.·_]*(?=\s|$)/u;

type OpenTag = XmlPiece & { readonly kind: 'open' };

/**
 * Size of an SVG picture, in CSS pixels, once it is sure that a browser shows it and that it holds nothing but a still
 * picture: well-formed XML in UTF-8, no scripts, nothing from outside the file, no document type.
 */
export function parseSvg(bytes: Uint8Array): Parsed<PixelSize> {
  const text = decode(bytes);
  if (text === undefined) {
    const found = 'is not saved as UTF-8';
    return { fault: { found, expected: 'an SVG file in UTF-8', remedy: 'save it again as plain SVG' } };
  }
  const walk: Walk = { text, open: [] };
  for (const piece of scanXml(text)) {
    const fault = look(piece, walk);
    if (fault !== undefined) return { fault };
  }
  if (walk.root === undefined || walk.open.length > 0)
    return { fault: notWellFormed(walk, 'a tag without its end', text.length) };
  return measure(walk.root, walk);
}

interface Walk {
  readonly text: string;
  /** Tags that are open, with the prefixes that count in them. */
  readonly open: { readonly name: string; readonly prefixes: ReadonlyMap<string, string> }[];
  root?: OpenTag;
  /** What stands in a style element so far, when one is open: comments may part it, and part nothing for a browser. */
  style?: string | undefined;
}

function decode(bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

function look(piece: XmlPiece, walk: Walk): MediaFault | undefined {
  switch (piece.kind) {
    case 'fault':
      return notWellFormed(walk, piece.found, piece.offset, piece.remedy);
    case 'instruction':
      return lookAtInstruction(piece.text, piece.offset, walk);
    case 'text':
      return lookAtText(piece, walk);
    case 'close':
      return lookAtClosing(piece, walk);
    case 'open':
      return lookAtOpening(piece, walk);
  }
}

function lookAtInstruction(text: string, offset: number, walk: Walk): MediaFault | undefined {
  const target = TARGET.exec(text)?.[0];
  if (target === undefined || (target !== 'xml' && /^xml$/i.test(target))) {
    return notWellFormed(walk, 'a `<?` that begins nothing known', offset);
  }
  if (target === 'xml-stylesheet') {
    return forbidden(walk, { found: 'a style sheet from outside the file', remedy: 'save it as plain SVG' }, offset);
  }
  if (target !== 'xml') return undefined;
  if (offset > 0) return notWellFormed(walk, 'something before its first line', offset);
  const declaration = DECLARATION.exec(text);
  if (declaration === null) return notWellFormed(walk, 'a first line that is not written as it must be', offset);
  const encoding = declaration[1] ?? declaration[2] ?? 'utf-8';
  return /^utf-?8$/i.test(encoding) ? undefined : notWellFormed(walk, `the encoding \`${encoding}\``, offset);
}

function lookAtText({ text, offset }: XmlPiece & { kind: 'text' }, walk: Walk): MediaFault | undefined {
  if (walk.open.length === 0) {
    return text.trim() === '' ? undefined : notWellFormed(walk, 'text outside of its tags', offset);
  }
  if (walk.style !== undefined) walk.style += text;
  return undefined;
}

function lookAtClosing({ name, offset }: XmlPiece & { kind: 'close' }, walk: Walk): MediaFault | undefined {
  if (walk.open.pop()?.name !== name) {
    return notWellFormed(walk, `\`</${name}>\` where another tag is open`, offset);
  }
  const content = walk.style === undefined ? undefined : findForbiddenStyle(walk.style);
  walk.style = undefined;
  return content && forbidden(walk, content, offset);
}

function lookAtOpening(tag: OpenTag, walk: Walk): MediaFault | undefined {
  const content = findForbiddenTag(tag);
  if (content !== undefined) return forbidden(walk, content, tag.offset);
  if (walk.style !== undefined) return notWellFormed(walk, 'a tag in a style', tag.offset);
  const prefixes = readPrefixes(tag, walk.open.at(-1)?.prefixes ?? KNOWN_PREFIXES);
  const names = [tag.name, ...tag.attributes.map(({ name }) => name).filter((name) => !isNamespace(name))];
  const unknown = names.find((name) => name.includes(':') && !prefixes.has(prefixOf(name)));
  if (unknown !== undefined) {
    return notWellFormed(walk, `\`${unknown}\`, but no \`xmlns:${prefixOf(unknown)}\``, tag.offset);
  }
  if (walk.open.length === 0) {
    if (walk.root !== undefined) return notWellFormed(walk, 'something after its last tag', tag.offset);
    if (localName(tag.name) !== 'svg') return notWellFormed(walk, `\`<${tag.name}>\` as its first tag`, tag.offset);
    if (prefixes.get(prefixOf(tag.name)) !== SVG_NAMESPACE) {
      return {
        found: 'has no `xmlns` in its first tag, so that browsers do not show it',
        expected: `\`xmlns="${SVG_NAMESPACE}"\` there`,
        remedy: 'add it',
        place: placeAt(walk.text, tag.offset),
      };
    }
    walk.root = tag;
  }
  if (tag.isEmpty) return undefined;
  walk.open.push({ name: tag.name, prefixes });
  if (localName(tag.name) === 'style') walk.style = '';
  return undefined;
}

/** `xml` needs no declaration: Namespaces in XML 1.0, section 3. */
const KNOWN_PREFIXES: ReadonlyMap<string, string> = new Map([['xml', 'http://www.w3.org/XML/1998/namespace']]);

function prefixOf(name: string): string {
  return name.slice(0, Math.max(0, name.indexOf(':')));
}

function readPrefixes({ attributes }: OpenTag, around: ReadonlyMap<string, string>): ReadonlyMap<string, string> {
  const declared = attributes.filter(({ name }) => isNamespace(name));
  if (declared.length === 0) return around;
  return new Map([...around, ...declared.map(({ name, value }) => [name.slice('xmlns:'.length), value] as const)]);
}

/** What browsers take for the size: the lengths of the first tag, else the sides of its view box. */
function measure({ attributes, offset }: OpenTag, walk: Walk): Parsed<PixelSize> {
  const read = (name: string) => attributes.find((attribute) => attribute.name === name)?.value;
  const [, , boxWidth, boxHeight] =
    read('viewBox')
      ?.trim()
      .split(/[\s,]+/)
      .map(Number) ?? [];
  const width = readLength(read('width'));
  const height = readLength(read('height'));
  // A side that is not said goes by the other one and the shape of the box.
  const widthPx = width ?? scale(height, boxWidth, boxHeight);
  const heightPx = height ?? scale(width, boxHeight, boxWidth);
  if (isLength(widthPx) && isLength(heightPx)) return { value: { widthPx: round(widthPx), heightPx: round(heightPx) } };
  return {
    fault: {
      found: 'does not say how large it is',
      expected: '`viewBox`, or `width` and `height`, in its first tag',
      remedy: 'save it again as plain SVG, or add `viewBox="0 0 100 100"` with its own numbers',
      place: placeAt(walk.text, offset),
    },
  };
}

function readLength(text: string | undefined): number | undefined {
  const [, number, unit = ''] = LENGTH.exec(text ?? '') ?? [];
  return number === undefined ? undefined : Number(number) * (PIXELS[unit.toLowerCase()] ?? 1);
}

function scale(side: number | undefined, own: number | undefined, other: number | undefined): number | undefined {
  return side === undefined ? own : (side * (own ?? Number.NaN)) / (other ?? Number.NaN);
}

function isLength(value: number | undefined): value is number {
  return value !== undefined && Number.isFinite(value) && value > 0;
}

function round(px: number): number {
  return Math.round(px * 100) / 100;
}

function forbidden({ text }: Walk, { found, remedy }: ForbiddenContent, offset: number): MediaFault {
  const expected = 'a still picture that needs nothing else';
  return { found: `holds ${found}`, expected, remedy, place: placeAt(text, offset) };
}

function notWellFormed(
  { text }: Walk,
  found: string,
  offset: number,
  remedy = 'save it again as plain SVG, or as PNG',
): MediaFault {
  return { found: `has ${found}`, expected: 'a plain SVG file', remedy, place: placeAt(text, offset) };
}

function placeAt(text: string, offset: number): { line: number; column: number } {
  const before = text.slice(0, offset).split(/\r\n|\r|\n/);
  return { line: before.length, column: (before.at(-1) ?? '').length + 1 };
}
