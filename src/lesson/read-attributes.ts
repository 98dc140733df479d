import { quote } from '../content/wording.ts';
import { describeFault } from './syntax-scan.ts';

/** A fault in how a directive is written, found by reading it as its author meant it. */
export interface WritingFault {
  /** Offset in the text. */
  readonly at: number;
  readonly message: string;
  readonly found?: string;
  readonly expected?: string;
}

/** Where reading went well: the offset after what was read. */
interface ReadWell {
  readonly end: number;
}

const SMART_QUOTE = /[\u201C-\u201F\u2018-\u201B\u00AB\u00BB\u2039\u203A\u2032\u2033\uFF02\uFF07]/;
const NAME = /(?:[^\s\p{P}\p{S}]|[-_])(?:[^\s\p{P}\p{S}]|[-_.:])*/uy;
const SHORTCUT = /[.#][^\s"'.#=<>`}]+/y;

/** Whether a character is a quotation mark other than the two straight ones. */
export function isSmartQuote(character: string | undefined): boolean {
  return character !== undefined && SMART_QUOTE.test(character);
}

/** The fault of a value that begins with a typographic quotation mark. */
export function describeSmartQuote(at: number, character: string): WritingFault {
  return {
    at,
    message: describeFault(
      `A curly quotation mark ${quote(character)}`,
      'a straight `"`',
      'type `"` at both ends of the value',
    ),
    found: character,
    expected: '"',
  };
}

/** The fault of attributes set apart by a comma or semicolon. */
export function describeComma(at: number, character: string): WritingFault {
  const what = character === ',' ? 'A comma' : `${quote(character)}`;
  const message = describeFault(
    `${what} between attributes`,
    'a space',
    'take it out, or put the value in quotes if it is part of it',
  );
  return { at, message, found: character, expected: ' ' };
}

/** The fault of a quotation mark written `\"` in a value. */
export function describeBackslash(at: number, mark: string): WritingFault {
  const other = mark === '"' ? "'" : '"';
  const message = describeFault(
    `A backslash before ${quote(mark)} in a value`,
    'no quotation mark of the same kind inside',
    `put ${quote(other)} around the whole value, or write \`&quot;\` inside it`,
  );
  return { at, message, found: `\\${mark}` };
}

/**
 * Reads the attributes of a directive the way the tokenizer does, from their opening brace at `open`, and tells the
 * first thing it stumbled over. `lineEnd` is where they must have ended; `blockEnd` the end of the paragraph, to tell
 * attributes broken over lines from a forgotten brace.
 */
export function readAttributes(
  source: string,
  open: number,
  lineEnd: number,
  blockEnd: number,
): WritingFault | ReadWell {
  const text = source.slice(0, lineEnd);
  let at = open + 1;
  while (true) {
    at = skipSpace(text, at);
    if (at >= lineEnd) return describeOpenBrace(source, open, lineEnd, blockEnd);
    if (text[at] === '}') return { end: at + 1 };
    const shortcut = matchAt(SHORTCUT, text, at);
    const name = shortcut ?? matchAt(NAME, text, at);
    if (name === undefined) return describeStray(text, at);
    const nameAt = at;
    at += name.length;
    const equals = shortcut === undefined ? skipSpace(text, at) : at;
    if (text[equals] !== '=' || shortcut !== undefined) continue;
    const value = readValue(text, skipSpace(text, equals + 1), { name, nameAt }, () =>
      describeOpenBrace(source, open, lineEnd, blockEnd),
    );
    if (!('end' in value)) return value;
    at = value.end;
  }
}

function readValue(
  text: string,
  at: number,
  { name, nameAt }: { readonly name: string; readonly nameAt: number },
  describeOpen: () => WritingFault,
): WritingFault | ReadWell {
  const first = text[at];
  if (first === undefined || first === '}') {
    const message = describeFault(
      `${quote(`${name}=`)} has no value`,
      'a value after `=`',
      'write one, or take the attribute out',
    );
    return { at: nameAt, message, found: `${name}=` };
  }
  if (isSmartQuote(first)) return describeSmartQuote(at, first);
  if (first === '"' || first === "'") return readQuoted(text, at, first, describeOpen);
  return readUnquoted(text, at);
}

function readQuoted(text: string, at: number, mark: string, describeOpen: () => WritingFault): WritingFault | ReadWell {
  const close = text.indexOf(mark, at + 1);
  if (close === -1) {
    const fault = describeOpen();
    // Only a brace further down tells that the value goes on there.
    if (fault.found === 'line break') return fault;
    const message = describeFault(
      `A value begins with ${quote(mark)} and does not end`,
      `${quote(mark)} after it`,
      'add the closing mark',
    );
    return { at, message, expected: mark };
  }
  if (text[close - 1] === '\\') return describeBackslash(close - 1, mark);
  const next = text[close + 1];
  if (next === undefined || next === '}' || /\s/.test(next)) return { end: close + 1 };
  if (next === ',' || next === ';') return describeComma(close + 1, next);
  const message = describeFault(
    `${quote(next)} directly after a quoted value`,
    'a space or `}`',
    'put a space between, or mend the quotation marks',
  );
  return { at: close + 1, message, found: next };
}

function readUnquoted(text: string, at: number): WritingFault | ReadWell {
  const length = text.slice(at).search(/[\s}]/);
  const end = length === -1 ? text.length : at + length;
  const value = text.slice(at, end);
  const comma = value.search(/[,;](?=$|[^,;=]*=)/);
  if (comma !== -1) return describeComma(at + comma, value.charAt(comma));
  const wrong = value.search(/["'<=>`]/);
  if (wrong === -1) return { end };
  const sign = value.charAt(wrong);
  const message = describeFault(
    `${quote(sign)} in a value without quotes`,
    'quotes around such a value',
    'write `"` before and after the whole value',
  );
  return { at: at + wrong, message, found: sign };
}

function describeOpenBrace(source: string, open: number, lineEnd: number, blockEnd: number): WritingFault {
  if (source.slice(lineEnd, blockEnd).includes('}')) {
    const message = describeFault(
      'Attributes broken over lines',
      'all of them on the line of the directive',
      'join the lines',
    );
    return { at: open, message, found: 'line break' };
  }
  return {
    at: open,
    message: describeFault('A `{` is not closed', '`}` after the attributes', 'add `}`'),
    found: '{',
    expected: '}',
  };
}

function describeStray(text: string, at: number): WritingFault {
  const sign = text.charAt(at);
  if (sign === ',' || sign === ';') return describeComma(at, sign);
  if (isSmartQuote(sign)) return describeSmartQuote(at, sign);
  const message = describeFault(
    `${quote(sign)} where an attribute begins`,
    '`name=value` or `}`',
    'mend the text between the braces',
  );
  return { at, message, found: sign };
}

/** Offset of the first character from `at` on that is no white space. */
export function skipSpace(text: string, at: number): number {
  let next = at;
  while (next < text.length && /\s/.test(text.charAt(next))) next++;
  return next;
}

/** What a sticky pattern matches at an offset; undefined for nothing. */
export function matchAt(pattern: RegExp, text: string, at: number): string | undefined {
  pattern.lastIndex = at;
  return pattern.exec(text)?.[0] || undefined;
}
