import { quote } from '../content/wording.ts';
import { type Candidate, isBracket } from './colon-candidate.ts';
import type { WritingFault } from './read-attributes.ts';
import { describeSpace, describeWideColon, findOpeningFault } from './read-opening.ts';
import { findBlockEnd, startsLine } from './source-lines.ts';
import { describeFault, findMeant, type SyntaxScan, takesForm, writeExample } from './syntax-scan.ts';

/** A fault in a line of prose: a directive written wrongly, or the name of none. */
export type InlineFault = WritingFault & { readonly rule?: 'directive-unknown' };

/**
 * What is wrong with colons in a line of prose that were not read as a directive; undefined when they are prose.
 * Only a known name, or one near it with braces, tells that a directive was meant.
 */
export function findInlineFault(scan: SyntaxScan, candidate: Candidate): InlineFault | undefined {
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

function describeUnknown(at: number, name: string, meant: string, { known }: SyntaxScan): InlineFault {
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

function inlineSpan(source: string, start: number): { start: number; lineEnd: number; blockEnd: number } {
  const blockEnd = findBlockEnd(source, start);
  return { start, lineEnd: blockEnd, blockEnd };
}
