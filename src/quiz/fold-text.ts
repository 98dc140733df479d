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

/** A text as a marker compares it: way of encoding (NFC), upper and lower case and white space make no difference. */
export function foldText(text: string): string {
  // Upper case first: it brings "ß" and "ss", and the two small sigmas, together.
  return text.normalize('NFC').toUpperCase().toLowerCase().normalize('NFC').replace(/\s+/gu, ' ').trim();
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
