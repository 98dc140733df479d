import type { Nodes } from 'mdast';
import { toString as readPlainText } from 'mdast-util-to-string';

/** Longest beginning repeated in a message, in characters. */
const LONGEST_START = 40;

/** The first words of what an author wrote, for a message: between backticks, on one line. */
export function quoteStart(nodes: readonly Nodes[]): string {
  const words = nodes.map((node) => readPlainText(node)).join(' ');
  return `\`${[...words.replace(/[\s`]+/g, ' ')].slice(0, LONGEST_START).join('').trim()}\``;
}
