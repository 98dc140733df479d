import type { ElementContent } from 'hast';
import type { NamedNight } from '../calendar/rules.ts';

/** The words of a tree as one text; a picture counts with its text alternative. */
export function readText(content: readonly ElementContent[]): string {
  return content.map(readNode).join('');
}

function readNode(node: ElementContent): string {
  if (node.type === 'text') return node.value;
  if (node.type !== 'element') return '';
  if (node.tagName === 'br') return ' ';
  const { alt, ariaLabel } = node.properties;
  if (node.tagName === 'img' && typeof alt === 'string') return alt;
  return node.tagName === 'svg' && typeof ariaLabel === 'string' ? ariaLabel : readText(node.children);
}

/** Soft hyphens, breaks without width and marks of direction: nobody sees them. Joiners change letters, and stay. */
const UNSEEN = /[\u00AD\u061C\u200B\u200E\u200F\u202A-\u202E\u2060\u2066-\u2069\uFEFF]/g;

/**
 * A text as a marker compares it: way of encoding (NFC), upper and lower case, white space and characters that nobody
 * sees make no difference.
 */
export function foldText(text: string): string {
  const seen = text.replace(UNSEEN, '');
  // Upper case first: it brings "ß" and "ss", and the two small sigmas, together.
  return seen.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').replace(/\s+/gu, ' ').trim();
}

/** Whether a reader gets anything from a tree: words, or a picture, which may do without words. */
export function showsSomething(node: ElementContent): boolean {
  if (node.type === 'text') return foldText(node.value) !== '';
  if (node.type !== 'element') return false;
  return node.tagName === 'img' || node.tagName === 'svg' || node.children.some(showsSomething);
}

const foldedNames = new WeakMap<NamedNight, string>();

/** The name of a night as {@link foldText} folds it; each night's is folded once, as every quiz compares them all. */
export function foldName(night: NamedNight): string {
  const known = foldedNames.get(night);
  if (known !== undefined) return known;
  const folded = foldText(night.name);
  foldedNames.set(night, folded);
  return folded;
}
