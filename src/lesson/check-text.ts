import type { Text } from 'mdast';
import { quote } from '../content/wording.ts';
import { matchAt, type WritingFault } from './read-attributes.ts';
import { COLONS, DIRECTIVE_NAME, describeSpace, describeWideColon, findOpeningFault } from './read-opening.ts';
import { describeFault, findMeant, type SyntaxScan, takesForm, writeExample } from './syntax-scan.ts';

const ANY_COLON = /[:\uFF1A]/;
/** What may stand before the text on its line: quote marks and the marks of list items. */
const LINE_PREFIX = /^(?:[ \t>]|[-+*][ \t]|\d{1,9}[.)][ \t])*$/;
/** Longest beginning of a line that is looked at, in UTF-16 code units. */
const LONGEST_PREFIX = 200;
const BLANKS = /[^\S\r\n]+/y;
const LIST_PREFIX = /(?:[-+*]|\d{1,9}[.)])[ \t]+$/;
/** A task-list box that the tokenizer did not take for one. */
const LOOSE_BOX = /^\[ ?[xX]? ?\](?=\S|$)|^\[(?: [xX] ?|[xX] )\]|^\[\] /;

/** A run of colons in prose and what follows it, as offsets and text. */
interface Candidate {
  readonly at: number;
  readonly colons: string;
  readonly nameAt: number;
  readonly name: string;
  /** The first sign after the name, and whether white space stands before it. */
  readonly next: string;
  readonly gap: boolean;
}

/**
 * Finds what looks like a directive in a piece of prose: something kept it from being one, and it would be printed as
 * it stands. What has no known name, braces or position of a directive is prose and says nothing.
 */
export function checkText(scan: SyntaxScan, node: Text): void {
  const from = node.position?.start.offset;
  const to = node.position?.end.offset;
  if (from === undefined || to === undefined) return;
  if (node.value.startsWith('[')) checkBox(scan, from);
  if (!ANY_COLON.test(node.value)) return;
  const { source } = scan;
  let at = Math.max(from, scan.skipTo);
  while (at < to) {
    const length = source.slice(at, to).search(ANY_COLON);
    if (length === -1) return;
    at += length;
    const candidate = readCandidate(source, at);
    if (!isEscaped(source, at)) checkCandidate(scan, candidate);
    at = Math.max(at + candidate.colons.length, scan.skipTo);
  }
}

function readCandidate(source: string, at: number): Candidate {
  const colons = matchAt(COLONS, source, at) ?? ':';
  const nameAt = skipBlanks(source, at + colons.length);
  const name = matchAt(DIRECTIVE_NAME, source, nameAt) ?? '';
  const nextAt = skipBlanks(source, nameAt + name.length);
  return { at, colons, nameAt, name, next: source.charAt(nextAt).trim(), gap: nextAt > nameAt + name.length };
}

function checkCandidate(scan: SyntaxScan, candidate: Candidate): void {
  const { colons, name, next } = candidate;
  const beginsLine = startsLine(scan.source, candidate.at);
  if (beginsLine && colons.length > 2 && name === '' && next === '') checkStrayFence(scan, candidate);
  else if (beginsLine && looksLikeOpening(scan, candidate)) reportOpening(scan, candidate);
  else if (!beginsLine || colons.length === 1) checkInline(scan, candidate);
}

/** Three colons at the start of a line are never prose; two are a directive when a name or braces say so. */
function looksLikeOpening({ known }: SyntaxScan, { at, colons, nameAt, name, next, gap }: Candidate): boolean {
  if (colons.length > 2) return true;
  if (colons.length < 2 || name === '') return false;
  const bracket = isBracket(next);
  if (nameAt > at + colons.length)
    return bracket ? findMeant(known, name) !== undefined : known.has(name) && next === '';
  return (bracket && !gap) || findMeant(known, name) !== undefined;
}

function reportOpening(scan: SyntaxScan, candidate: Candidate): void {
  const { source, known } = scan;
  const span = {
    start: candidate.at,
    lineEnd: findLineEnd(source, candidate.at),
    blockEnd: findBlockEnd(source, candidate.at),
  };
  const fault = findOpeningFault(source, span, known);
  report(scan, fault.at < span.lineEnd ? fault : describeUnread(source, candidate));
  scan.skipTo = fault.found === 'line break' ? findLineEnd(source, source.indexOf('}', span.lineEnd)) : span.lineEnd;
  if (candidate.colons.length > 2) scan.orphans.push(candidate.colons.length);
}

/** A directive with nothing wrong up to the end of its line: its place kept it from being read. */
function describeUnread(source: string, { at, colons, name }: Candidate): WritingFault {
  const head = colons + name;
  if (/(?: {4}|\t *)$/.test(readBefore(source, at) ?? '')) return describeIndent(at, head);
  const message = describeFault(
    `${quote(head)} is not read as a directive here`,
    '`name[label]{attributes}` on a line of its own',
    'put an empty line before it',
  );
  return { at, message, found: head };
}

/** The fault of a directive set in so far that Markdown takes it for code or for the text above. */
export function describeIndent(at: number, head: string): WritingFault {
  const message = describeFault(
    `${quote(head)} stands too far to the right to be read as a directive`,
    'it under the first letter of the text it belongs to',
    'take spaces out before it, or put code between lines of three backticks',
  );
  return { at, message, found: head };
}

/** A closing fence that closes nothing; silent when a fault already reported took its opening fence away. */
function checkStrayFence(scan: SyntaxScan, { at, colons }: Candidate): void {
  const wide = colons.indexOf('\uFF1A');
  if (wide !== -1) {
    report(scan, describeWideColon(at + wide));
    return;
  }
  const orphan = scan.orphans.findLastIndex((size) => size <= colons.length);
  if (orphan !== -1) {
    scan.orphans.splice(orphan, 1);
    return;
  }
  const message = describeFault(
    `${quote(colons)} closes nothing`,
    'an open block before it with as many colons or fewer',
    'take the line out, or begin the block with its name',
  );
  report(scan, { at, message, found: colons });
}

function checkInline(scan: SyntaxScan, candidate: Candidate): void {
  const fault = findInlineFault(scan, candidate);
  if (fault === undefined) return;
  report(scan, fault);
  scan.skipTo = Math.max(scan.skipTo, candidate.nameAt + candidate.name.length);
}

function findInlineFault(
  scan: SyntaxScan,
  candidate: Candidate,
): (WritingFault & { rule?: 'directive-unknown' }) | undefined {
  const { known, source } = scan;
  const { at, colons, nameAt, name, next, gap } = candidate;
  if (name === '') return undefined;
  const meant = findMeant(known, name);
  if (meant === undefined) return undefined;
  const braced = next === '{' || next === '\uFF5B';
  const attached = !gap && isBracket(next);
  const exact = meant === name;
  const spaced = nameAt > at + colons.length;
  const wide = colons.indexOf('\uFF1A');
  if (spaced) return exact && braced && !gap ? describeSpacedColon(at + colons.length, colons, name) : undefined;
  if (wide !== -1) return exact && attached ? describeWideColon(at + wide) : undefined;
  if (colons.length > 1) return findMisplaced(candidate, meant, scan);
  if (!exact)
    return attached && (braced || name.toLowerCase() === meant)
      ? describeUnknown(nameAt, name, meant, scan)
      : undefined;
  if (!takesForm(known, name, 'text'))
    return attached || standsAlone(source, candidate) ? describeNotInline(candidate, scan) : undefined;
  if (gap && next === '{') return describeSpace(nameAt + name.length, `:${name}`, '{');
  return attached && next !== '{' && next !== '[' ? findOpeningFault(source, inlineSpan(source, at), known) : undefined;
}

/** Two colons or more in the middle of a line. */
function findMisplaced(
  { at, colons, name, next, gap }: Candidate,
  meant: string,
  scan: SyntaxScan,
): WritingFault | undefined {
  const { known, source } = scan;
  const attached = !gap && isBracket(next);
  if (!attached && (meant !== name || /[\p{L}\p{N}_]/u.test(source.charAt(at - 1)))) return undefined;
  const head = colons + name;
  const message = takesForm(known, meant, 'text')
    ? describeFault(
        `${quote(head)} in the middle of a line`,
        'one colon there',
        `write ${quote(writeExample(known, meant))}`,
      )
    : describeFault(
        `${quote(head)} in the middle of a line`,
        'it on a line of its own',
        'begin a new line with it, after an empty line',
      );
  return { at, message, found: head };
}

/** A name with one colon whose directive cannot stand within a line. */
function describeNotInline({ at, name }: Candidate, { known }: SyntaxScan): WritingFault {
  const right = writeExample(known, name);
  const message = describeFault(
    `${quote(`:${name}`)} with one colon`,
    quote(right),
    'write it so, on a line of its own',
  );
  return { at, message, found: `:${name}`, expected: right };
}

function describeUnknown(
  at: number,
  name: string,
  meant: string,
  { known }: SyntaxScan,
): WritingFault & { rule: 'directive-unknown' } {
  const message = describeFault(
    `${quote(name)} is not a directive`,
    'the name of one',
    `did you mean ${quote(writeExample(known, meant))}?`,
  );
  return { rule: 'directive-unknown', at, message, found: name, expected: meant };
}

function describeSpacedColon(at: number, colons: string, name: string): WritingFault {
  const message = describeFault(
    `A space between ${quote(colons)} and ${quote(name)}`,
    'the name directly after the colon',
    'take the space out',
  );
  return { at, message, found: `${colons} ${name}` };
}

function standsAlone(source: string, { at, next, gap }: Candidate): boolean {
  return next === '' && !gap && startsLine(source, at);
}

/** An item that begins with a box which is printed as text, and would show the answer. */
function checkBox(scan: SyntaxScan, at: number): void {
  const { source } = scan;
  if (at < scan.skipTo || !LIST_PREFIX.test(readBefore(source, at) ?? '')) return;
  const box = LOOSE_BOX.exec(source.slice(at, findLineEnd(source, at)))?.[0];
  if (box === undefined) return;
  const message = describeFault(
    `${quote(box.trim())} is not read as a box to tick`,
    '`[x]` or `[ ]`, a space, and a text',
    'write it so',
  );
  report(scan, { at, message, found: box.trim() });
}

function report({ faults }: SyntaxScan, fault: WritingFault & { rule?: 'directive-unknown' }): void {
  faults.push({ rule: 'directive-syntax', ...fault });
}

function inlineSpan(source: string, start: number): { start: number; lineEnd: number; blockEnd: number } {
  const blockEnd = findBlockEnd(source, start);
  return { start, lineEnd: blockEnd, blockEnd };
}

/** What stands before an offset on its line; undefined when that is much more than quote marks and list items take. */
function readBefore(source: string, at: number): string | undefined {
  const from = Math.max(0, at - LONGEST_PREFIX);
  const lines = source.slice(from, at).split(/[\r\n]/);
  return lines.length === 1 && from > 0 ? undefined : lines.at(-1);
}

/** Whether only quote marks, marks of list items and white space stand before an offset on its line. */
function startsLine(source: string, at: number): boolean {
  return LINE_PREFIX.test(readBefore(source, at) ?? '-');
}

/** Offset of the first character from `at` on that is no white space within the line. */
function skipBlanks(source: string, at: number): number {
  return at + (matchAt(BLANKS, source, at)?.length ?? 0);
}

function isBracket(sign: string): boolean {
  return sign !== '' && '{[\uFF5B\uFF3B'.includes(sign);
}

function isEscaped(source: string, at: number): boolean {
  let backslashes = 0;
  while (source[at - 1 - backslashes] === '\\') backslashes++;
  return backslashes % 2 === 1;
}

/** Offset of the end of the line, before its ending. */
export function findLineEnd(source: string, at: number): number {
  const length = source.slice(at).search(/[\r\n]/);
  return length === -1 ? source.length : at + length;
}

/** Offset of the end of the paragraph: the next empty line, or the end of the text. */
export function findBlockEnd(source: string, at: number): number {
  const length = source.slice(at).search(/(?:\r\n|\n|\r(?!\n))[ \t>]*(?:[\r\n]|$)/);
  return length === -1 ? source.length : at + length;
}
