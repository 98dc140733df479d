import { quote } from '../content/wording.ts';
import { matchAt, readAttributes, skipSpace, type WritingFault } from './read-attributes.ts';
import { describeFault, findMeant, type KnownForms, writeExample } from './syntax-scan.ts';

/** A name as the tokenizer reads it: letters, digits and other signs that are no punctuation, with `-` and `_` inside. */
export const DIRECTIVE_NAME = /[^\s\p{P}\p{S}](?:[^\s\p{P}\p{S}]|[-_])*/uy;
/** Colons, plain or full-width. */
export const COLONS = /[:\uFF1A]+/y;

/** Signs that an input method writes for braces and brackets. */
const WIDE_BRACKET = /[\uFF5B\uFF3B\u3010\u3014]/;

/** Where a directive was meant to stand: its first colon, the end of its line and of its paragraph, as offsets. */
interface OpeningSpan {
  readonly start: number;
  readonly lineEnd: number;
  readonly blockEnd: number;
}

/**
 * Reads a line that was meant to begin a directive, but was taken for prose, and tells the first thing that kept it
 * from being one.
 */
export function findOpeningFault(source: string, span: OpeningSpan, known: KnownForms): WritingFault {
  const line = source.slice(0, span.lineEnd);
  const colons = matchAt(COLONS, line, span.start) ?? '';
  const wide = colons.indexOf('\uFF1A');
  if (wide !== -1) return describeWideColon(span.start + wide);
  const afterColons = span.start + colons.length;
  const nameAt = skipSpace(line, afterColons);
  const name = matchAt(DIRECTIVE_NAME, line, nameAt);
  if (name === undefined) return describeNoName(line, nameAt, colons);
  if (nameAt > afterColons) return describeSpacedName(afterColons, colons, name, known);
  if (/[-_]$/.test(name)) {
    const message = describeFault(
      `The name ${quote(name)} ends with ${quote(name.slice(-1))}`,
      'a letter or digit at its end',
      'take the last sign out',
    );
    return { at: nameAt, message, found: name };
  }
  return findFaultAfterName(source, line, span, nameAt + name.length);
}

function findFaultAfterName(source: string, line: string, span: OpeningSpan, afterName: number): WritingFault {
  let at = afterName;
  if (line[at] === '[') {
    const close = findLabelEnd(line, at);
    if (close === undefined) return describeOpenBracket(source, at, span);
    at = close;
  }
  if (line[at] === '{') {
    const read = readAttributes(source, at, span.lineEnd, span.blockEnd);
    if (!('end' in read)) return read;
    at = read.end;
  }
  return describeTrailing(source.slice(span.start, at), line, at);
}

/** Offset after the bracket that closes the one at `open`; undefined when the line has none. */
function findLabelEnd(line: string, open: number): number | undefined {
  let depth = 0;
  for (let at = open; at < line.length; at++) {
    if (line[at] === '\\') at++;
    else if (line[at] === '[') depth++;
    else if (line[at] === ']' && --depth === 0) return at + 1;
  }
  return undefined;
}

function describeOpenBracket(source: string, at: number, { lineEnd, blockEnd }: OpeningSpan): WritingFault {
  const broken = source.slice(lineEnd, blockEnd).includes(']');
  const message = broken
    ? describeFault('A label broken over lines', 'all of it on the line of the directive', 'join the lines')
    : describeFault('A `[` is not closed', '`]` after the label', 'add `]`');
  return { at, message, found: broken ? 'line break' : '[', expected: ']' };
}

function describeTrailing(head: string, line: string, at: number): WritingFault {
  const next = line.charAt(at);
  const textAt = skipSpace(line, at);
  const sign = line.charAt(textAt);
  if (WIDE_BRACKET.test(next)) {
    const message = describeFault(
      `A full-width bracket ${quote(next)}`,
      'a plain `{` or `[`',
      'type the plain sign, at both ends',
    );
    return { at, message, found: next };
  }
  if (sign === '{' && head.endsWith('}'))
    return describeOrder(textAt, 'A second `{`', 'put all attributes in one pair of braces');
  if (sign === '[' && head.endsWith('}'))
    return describeOrder(textAt, 'A label after the attributes', 'put `[…]` before `{…}`');
  if (sign === '[' && head.endsWith(']')) return describeOrder(textAt, 'A second `[`', 'keep one label');
  if ((sign === '{' || sign === '[') && textAt > at) return describeSpace(at, head, sign);
  const message = describeFault(
    `Text after ${quote(head)}`,
    'the line to end there',
    'put the text on a line of its own, with an empty line between',
  );
  return { at: textAt, message, found: line.slice(textAt).trimEnd() };
}

/** The fault of a space between a directive and its braces or brackets. */
export function describeSpace(at: number, head: string, sign: string): WritingFault {
  const message = describeFault(
    `A space before ${quote(sign)}`,
    `${quote(sign)} directly after ${quote(head)}`,
    'take the space out',
  );
  return { at, message, found: ' ', expected: sign };
}

/** The fault of a colon as wide as a letter, which some input methods write. */
export function describeWideColon(at: number): WritingFault {
  return {
    at,
    message: describeFault('A full-width colon `\uFF1A`', 'a plain `:`', 'type the plain colon'),
    found: '\uFF1A',
    expected: ':',
  };
}

function describeOrder(at: number, what: string, advice: string): WritingFault {
  return { at, message: describeFault(what, '`name[label]{attributes}`', advice) };
}

function describeNoName(line: string, at: number, colons: string): WritingFault {
  const found = line.slice(at).trimEnd();
  return {
    at,
    message: describeFault(`${quote(found)} after ${quote(colons)}`, 'the name of a directive', 'write the name'),
    found,
  };
}

function describeSpacedName(at: number, colons: string, name: string, known: KnownForms): WritingFault {
  const meant = findMeant(known, name);
  const advice =
    meant === undefined
      ? `write ${quote(colons)} alone to close a block, or a name directly after it to begin one`
      : `write ${quote(writeExample(known, meant))}`;
  const message = describeFault(
    `A space between ${quote(colons)} and ${quote(name)}`,
    'the name directly after the colons',
    advice,
  );
  return { at, message, found: `${colons} ${name}` };
}
