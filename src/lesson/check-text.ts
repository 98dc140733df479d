import type { Text } from 'mdast';
import { quote } from '../content/wording.ts';
import { type Candidate, isBracket, isEscaped, readCandidate } from './colon-candidate.ts';
import { findInlineFault, type InlineFault } from './find-inline-fault.ts';
import type { WritingFault } from './read-attributes.ts';
import { describeWideColon, findOpeningFault } from './read-opening.ts';
import { findBlockEnd, findLineEnd, readBefore, startsLine } from './source-lines.ts';
import { describeFault, findMeant, type SyntaxScan } from './syntax-scan.ts';

const ANY_COLON = /[:\uFF1A]/;
const LIST_PREFIX = /(?:[-+*]|\d{1,9}[.)])[ \t]+$/;
/** A task-list box that the tokenizer did not take for one. */
const LOOSE_BOX = /^\[ ?[xX]? ?\](?=\S|\s*$)|^\[(?: [xX] ?|[xX] )\]|^\[\] /;

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

function report({ faults }: SyntaxScan, fault: InlineFault): void {
  faults.push({ rule: 'directive-syntax', ...fault });
}
