import { describeFault, type SyntaxFault } from './syntax-scan.ts';

/** Levels that may stand in one another: far above honest use, far below where walks over the tree fail. */
export const MOST_LEVELS = 100;

/** A line that begins with more marks of list items than there may be levels; a line across the page is none. */
const DEEP_LIST = new RegExp(
  `^(?![ \\t]*([-*])(?:[ \\t]*\\1)*[ \\t]*$)(?:[ \\t>]*(?:[-+*]|\\d{1,9}[.)])(?=[ \\t])){${MOST_LEVELS + 1}}`,
  'm',
);

/** The fences of blocks: what follows the colons tells an opening one from a closing one. */
const FENCE = /^[ \t>]*:{3,}([^\s:]?)/gm;

/**
 * The offset in a text at which lists or blocks stand in one another too deep, told from their marks alone: parsing them
 * would take minutes. Undefined when there is none; the tree may still be too deep, which `checkSyntax` finds.
 */
export function findDeepMarks(source: string): number | undefined {
  const list = source.search(DEEP_LIST);
  if (list !== -1) return list;
  if (!source.includes(':::')) return undefined;
  let open = 0;
  for (const { index, 1: name } of source.matchAll(FENCE)) {
    open = Math.max(0, open + (name === '' ? -1 : 1));
    if (open > MOST_LEVELS) return index;
  }
  return undefined;
}

/** The fault of what stands in one another too deep, at an offset. */
export function describeDepth(at: number): SyntaxFault {
  const message = describeFault(
    `Nested more than ${MOST_LEVELS} deep here`,
    'a few levels of quotations, lists, blocks or emphasis',
    'take some out, or close the blocks before',
  );
  return { rule: 'nesting', at, message };
}
