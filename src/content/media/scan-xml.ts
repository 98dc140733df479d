/** A piece of XML text; `offset` is where it begins, in UTF-16 code units. */
export type XmlPiece =
  | {
      readonly kind: 'open';
      readonly name: string;
      readonly attributes: readonly XmlAttribute[];
      /** True for `<a/>`, which has no closing tag. */
      readonly isEmpty: boolean;
      readonly offset: number;
    }
  | { readonly kind: 'close'; readonly name: string; readonly offset: number }
  /** Text between tags, references resolved. */
  | { readonly kind: 'text'; readonly text: string; readonly offset: number }
  /** `<?target …?>`. */
  | { readonly kind: 'instruction'; readonly text: string; readonly offset: number }
  /** What is not written as XML must be; the last piece. `found` follows "has". */
  | { readonly kind: 'fault'; readonly found: string; readonly remedy?: string; readonly offset: number };

/** An attribute, its references resolved. */
export interface XmlAttribute {
  readonly name: string;
  readonly value: string;
}

const PART = String.raw`[\p{L}_][\p{L}\p{N}\p{M}\-.·_]*`;
/** A name, with a prefix or without: Namespaces in XML 1.0, section 4. */
const NAME = `${PART}(?::${PART})?`;
const OPENING = new RegExp(`<(${NAME})`, 'uy');
const CLOSING = new RegExp(String.raw`</(${NAME})\s*>`, 'uy');
const ATTRIBUTE = new RegExp(String.raw`\s+(${NAME})\s*=\s*(?:"([^"<]*)"|'([^'<]*)')`, 'uy');
const TAG_END = /\s*(\/?)>/y;
const REFERENCE = /&(?:(lt|gt|amp|quot|apos)|#(\d{1,7})|#x([\da-fA-F]{1,6}));|&/g;
const SIGNS: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };
/** Signs that no XML 1.0 text may hold (section 2.2), or had better not. */
const NO_SIGN = /(?![\t\n\r])[\p{Cc}\uFFFE\uFFFF]/u;

/**
 * Reads XML 1.0 text piece by piece, as strictly as a browser does, but without document type declarations and the
 * entities that come with them: those are a fault. Whether tags are closed in turn is for the caller to see.
 */
export function* scanXml(text: string): Generator<XmlPiece> {
  const odd = NO_SIGN.exec(text);
  if (odd !== null) {
    yield { kind: 'fault', found: 'a control character', offset: odd.index };
    return;
  }
  for (let at = 0; at < text.length; ) {
    const { piece, end } = readPiece(text, at);
    if (piece !== undefined) yield piece;
    if (piece?.kind === 'fault') return;
    at = end;
  }
}

interface Read {
  /** Absent for what says nothing: a comment. */
  readonly piece?: XmlPiece;
  readonly end: number;
}

function readPiece(text: string, at: number): Read {
  if (text[at] !== '<') return readText(text, at);
  if (text.startsWith('<!--', at)) return readComment(text, at);
  if (text.startsWith('<![CDATA[', at)) {
    return readUntil(text, at, '<![CDATA[', ']]>', (inside) => ({ kind: 'text', text: inside, offset: at }));
  }
  if (text.startsWith('<?', at)) {
    return readUntil(text, at, '<?', '?>', (inside) => ({ kind: 'instruction', text: inside, offset: at }));
  }
  if (text.startsWith('<!', at))
    return fault(at, 'a document type (`<!DOCTYPE`)', 'take it out, from `<!` to `>`, or save as plain SVG');
  return readTag(text, at);
}

function readText(text: string, at: number): Read {
  const next = text.indexOf('<', at);
  const end = next === -1 ? text.length : next;
  const written = text.slice(at, end);
  if (written.includes(']]>')) return fault(at + written.indexOf(']]>'), 'a `]]>` that ends nothing');
  const resolved = resolveReferences(written);
  if (resolved.fault !== undefined) return fault(at + resolved.fault, UNKNOWN_REFERENCE);
  return { piece: { kind: 'text', text: resolved.text, offset: at }, end };
}

function readComment(text: string, at: number): Read {
  const end = text.indexOf('--', at + 4);
  if (end === -1 || text[end + 2] !== '>') return fault(at, 'a comment without its end, or with `--` in it');
  return { end: end + 3 };
}

function readUntil(text: string, at: number, begin: string, end: string, make: (inside: string) => XmlPiece): Read {
  const ends = text.indexOf(end, at + begin.length);
  if (ends === -1) return fault(at, `a \`${begin}\` without \`${end}\``);
  return { piece: make(text.slice(at + begin.length, ends)), end: ends + end.length };
}

function readTag(text: string, at: number): Read {
  const closing = matchAt(CLOSING, text, at);
  if (closing !== undefined) {
    return { piece: { kind: 'close', name: closing[1] ?? '', offset: at }, end: at + closing[0].length };
  }
  const opening = matchAt(OPENING, text, at);
  if (opening === undefined) return fault(at, 'a `<` that begins no tag');
  const name = opening[1] ?? '';
  const attributes = new Map<string, string>();
  let end = at + opening[0].length;
  for (let found = matchAt(ATTRIBUTE, text, end); found !== undefined; found = matchAt(ATTRIBUTE, text, end)) {
    const [whole, attribute = '', double, single] = found;
    const value = resolveReferences(double ?? single ?? '');
    if (value.fault !== undefined) return fault(end, UNKNOWN_REFERENCE);
    if (attributes.has(attribute)) return fault(end, `\`${attribute}\` twice in one tag`);
    attributes.set(attribute, value.text);
    end += whole.length;
  }
  const closed = matchAt(TAG_END, text, end);
  if (closed === undefined) return fault(at, `a tag \`<${name}\` that is not written as it must be`);
  const written = [...attributes].map(([attribute, value]) => ({ name: attribute, value }));
  const piece = { kind: 'open', name, attributes: written, isEmpty: closed[1] === '/', offset: at } as const;
  return { piece, end: end + closed[0].length };
}

const UNKNOWN_REFERENCE = 'an `&` that begins none of `&amp;`, `&lt;`, `&gt;`, `&quot;`, `&apos;` and numbers';

/** Text with its references resolved, or the offset of one that is not known. */
function resolveReferences(text: string): { readonly text: string; readonly fault?: number } {
  if (!text.includes('&')) return { text };
  let unknown: number | undefined;
  const resolved = text.replace(REFERENCE, (whole, name?: string, decimal?: string, hex?: string, offset = 0) => {
    const code = decimal !== undefined ? Number(decimal) : hex !== undefined ? Number.parseInt(hex, 16) : undefined;
    const sign = name !== undefined ? SIGNS[name] : findSign(code);
    if (sign === undefined) unknown ??= Number(offset);
    return sign ?? whole;
  });
  return { text: resolved, ...(unknown !== undefined && { fault: unknown }) };
}

function findSign(code: number | undefined): string | undefined {
  if (code === undefined || code > 0x10ffff || (code >= 0xd800 && code <= 0xdfff)) return undefined;
  const sign = String.fromCodePoint(code);
  return NO_SIGN.test(sign) ? undefined : sign;
}

function matchAt(pattern: RegExp, text: string, at: number): RegExpExecArray | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text) ?? undefined;
}

function fault(offset: number, found: string, remedy?: string): Read {
  return { piece: { kind: 'fault', found, offset, ...(remedy !== undefined && { remedy }) }, end: offset };
}
