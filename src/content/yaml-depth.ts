/** Levels that may stand in one another: far above honest use, far below where a reader runs out of stack. */
const MOST_LEVELS = 100;

/** More marks of lists, or of keys, in a row than there may be levels, or a line further in than any file needs. */
const DEEP_LINE = new RegExp(`^(?: *[-?:] +){${MOST_LEVELS + 1}}|^ {${2 * MOST_LEVELS + 1}}`, 'm');

const BRACKET = /[[\]{}]/g;

/**
 * The offset at which lists or maps stand in one another too deep, told from their marks alone; undefined when there is
 * none. A reader that finds out by running out of stack finds it at another place each time.
 * Brackets in quotes are counted too: no honest text leaves a hundred of them open.
 */
export function findYamlDepth(source: string): number | undefined {
  const line = source.search(DEEP_LINE);
  if (line !== -1) return line;
  let open = 0;
  for (const { 0: bracket, index } of source.matchAll(BRACKET)) {
    open = bracket === '[' || bracket === '{' ? open + 1 : Math.max(0, open - 1);
    if (open > MOST_LEVELS) return index;
  }
  return undefined;
}
