/** What may stand before the text on its line: quote marks and the marks of list items. */
const LINE_PREFIX = /^(?:[ \t>]|[-+*][ \t]|\d{1,9}[.)][ \t])*$/;
/** Longest beginning of a line that is looked at, in UTF-16 code units. */
const LONGEST_PREFIX = 200;

/** What stands before an offset on its line; undefined when that is much more than quote marks and list items take. */
export function readBefore(source: string, at: number): string | undefined {
  const from = Math.max(0, at - LONGEST_PREFIX);
  const lines = source.slice(from, at).split(/[\r\n]/);
  return lines.length === 1 && from > 0 ? undefined : lines.at(-1);
}

/** Whether only quote marks, marks of list items and white space stand before an offset on its line. */
export function startsLine(source: string, at: number): boolean {
  return LINE_PREFIX.test(readBefore(source, at) ?? '-');
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
