import { matchAt } from './read-attributes.ts';
import { COLONS, DIRECTIVE_NAME } from './read-opening.ts';

const BLANKS = /[^\S\r\n]+/y;

/** A run of colons in prose and what follows it, as offsets and text. */
export interface Candidate {
  readonly at: number;
  readonly colons: string;
  readonly nameAt: number;
  readonly name: string;
  /** The first sign after the name, and whether white space stands before it. */
  readonly next: string;
  readonly gap: boolean;
}

/** Reads the colons at an offset and what follows them on their line. */
export function readCandidate(source: string, at: number): Candidate {
  const colons = matchAt(COLONS, source, at) ?? ':';
  const nameAt = skipBlanks(source, at + colons.length);
  const name = matchAt(DIRECTIVE_NAME, source, nameAt) ?? '';
  const nextAt = skipBlanks(source, nameAt + name.length);
  return { at, colons, nameAt, name, next: source.charAt(nextAt).trim(), gap: nextAt > nameAt + name.length };
}

/** Whether a sign opens attributes or a label, as wide as a letter or not. */
export function isBracket(sign: string): boolean {
  return sign !== '' && '{[\uFF5B\uFF3B'.includes(sign);
}

/** Whether a backslash takes a sign its meaning. */
export function isEscaped(source: string, at: number): boolean {
  let backslashes = 0;
  while (source[at - 1 - backslashes] === '\\') backslashes++;
  return backslashes % 2 === 1;
}

/** Offset of the first character from `at` on that is no white space within the line. */
function skipBlanks(source: string, at: number): number {
  return at + (matchAt(BLANKS, source, at)?.length ?? 0);
}
