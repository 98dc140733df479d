import type { Element, ElementContent } from 'hast';
import { h } from 'hastscript';
import { fillLabel } from '../../content/fill-label.ts';
import type { ViewContext } from '../../directives/definition.ts';
import type { NameBook } from './name-book.ts';
import { readName } from './read-name.ts';

/** What tells of its names itself, or has no room for more words. */
const TELL_THEMSELVES = new Set(['tonight', 'gesture-run', 'score-strip']);

/**
 * Copies what a learner reads and puts behind each name of the calendar, the first time it comes, how it is said. Names
 * on cards count as said. Only names that the text has already are said: nothing is told that it does not tell.
 * @param tag Properties of the kit's own words, where the author's are in another language.
 */
export function sayNames(
  nodes: readonly ElementContent[],
  book: NameBook,
  view: ViewContext,
  tag: { readonly lang?: string },
): ElementContent[] {
  const said = new Set<string>();
  for (const node of nodes) collectOnCards(node, book, said, false);
  const walk = (node: ElementContent): ElementContent[] => {
    if (node.type !== 'element' || node.tagName === 'svg' || tellsItself(node)) return [node];
    const entry = readName(node, book);
    if (entry === undefined) return [{ ...node, children: node.children.flatMap(walk) }];
    if (entry.say === undefined || said.has(entry.name)) return [node];
    said.add(entry.name);
    const words = fillLabel(view.labels, 'say-name', { say: [h('span', { lang: view.namesLanguage }, entry.say)] });
    return [node, ' ', h('span', { className: ['name-say'], ...tag }, ['(', ...words, ')'])].map(toContent);
  };
  return nodes.flatMap(walk);
}

function tellsItself({ properties: { className } }: Element): boolean {
  return Array.isArray(className) && className.some((name) => TELL_THEMSELVES.has(String(name)));
}

function collectOnCards(node: ElementContent, book: NameBook, said: Set<string>, onCard: boolean): void {
  if (node.type !== 'element' || node.tagName === 'svg') return;
  const entry = readName(node, book);
  if (entry !== undefined && onCard) said.add(entry.name);
  for (const child of node.children) collectOnCards(child, book, said, onCard || tellsItself(node));
}

function toContent(part: ElementContent | string): ElementContent {
  return typeof part === 'string' ? { type: 'text', value: part } : part;
}
