import type { ElementContent } from 'hast';
import { PART_ID } from '../../lesson/take-out-parts.ts';
import type { LetteredContent } from '../../quiz/model.ts';
import type { MarkupElement } from './read-markup.ts';
import { findUsedPart } from './stored-parts.ts';

/** An attribute or a tag that stands at some items of a question and not at the others. */
export interface OddShell {
  /** Letter of an item at which it stands. */
  readonly letter: string;
  /** As written, such as `class="x"` or `<b>`. */
  readonly found: string;
  /** Where the element begins. */
  readonly at: number;
}

/** Attributes by which elements name or count each other: what they hold is never content. */
const NAMING =
  /^(?:id|for|name|value|tabindex|href|xlink:href|aria-(?:labelledby|describedby|details|controls|owns|flowto))$/;

/** One tag or attribute around or in an item. */
interface ShellPart {
  /** Folded so that what a page writes and what its content holds are the same. */
  readonly key: string;
  readonly shown: string;
  readonly at: number;
  /** Whether it names or counts, and so is no part of the content even where the content has it. */
  readonly isNaming: boolean;
}

/**
 * Compares what is around the lettered items of a question: apart from the letter and the content all must be the
 * same, or tell no more than the place, as `id="a-1"`, `id="a-2"` in their order do.
 * @param items Indices of the elements that hold one item each, in order of letters.
 * @returns The first difference; undefined where there is none.
 */
export function findOddShell(
  elements: readonly MarkupElement[],
  items: readonly number[],
  lettered: readonly LetteredContent[],
): OddShell | undefined {
  const shells = items.map((item, place) => leaveOut(listParts(elements, item), listContentKeys(lettered[place])));
  const counts = shells.map(countKeys);
  const odd = shells.map((parts, place) => {
    return parts.filter(({ key }) => counts.some((count) => count.get(key) !== counts[place]?.get(key)));
  });
  if (odd.every((parts) => parts.length === 0) || tellPlaceOnly(odd, lettered)) return undefined;
  const place = odd.findIndex((parts) => parts.length > 0);
  const part = odd[place]?.[0];
  return part && { letter: lettered[place]?.letter ?? '', found: part.shown, at: part.at };
}

/**
 * Tags and attributes of an element and of those in it. Attributes of pure drawing are not read, and a drawn part that
 * the page writes once is read where it is used.
 */
function listParts(elements: readonly MarkupElement[], item: number): ShellPart[] {
  const parts: ShellPart[] = [];
  for (let index = item; index < elements.length; index += 1) {
    const element = elements[index];
    if (element === undefined || (index > item && element.parent < item)) break;
    const { tag, at } = element;
    const used = findUsedPart(elements, element);
    if (used !== undefined) {
      parts.push(...listParts(elements, used).map((part) => ({ ...part, at })));
      continue;
    }
    parts.push({ key: tag.name, shown: `<${tag.name}>`, at, isNaming: false });
    for (const { name, value, offset } of tag.attributes) {
      if (name === 'id' && PART_ID.test(value)) continue;
      // An address of another file or of the web is content.
      const isNaming = NAMING.test(name) && (!name.endsWith('href') || value.startsWith('#'));
      parts.push({ key: keyOf(name, value), shown: `${name}="${value}"`, at: at + offset, isNaming });
    }
  }
  return parts;
}

/** The same parts as the content has them. */
function listContentKeys(lettered: LetteredContent | undefined): string[] {
  const keys: string[] = [];
  const add = (content: readonly ElementContent[]) => {
    for (const node of content) {
      if (node.type !== 'element') continue;
      keys.push(node.tagName.toLowerCase());
      for (const [name, value] of Object.entries(node.properties)) {
        const text = Array.isArray(value) ? value.join(' ') : value === true ? '' : String(value ?? '');
        keys.push(keyOf(name === 'className' ? 'class' : name, text));
      }
      add(node.children);
    }
  };
  add(lettered?.content ?? []);
  return keys;
}

/** `aria-label` and `ariaLabel`, `xlink:href` and `xLinkHref` are the same. */
function keyOf(name: string, value: string): string {
  return `${name.replace(/[-:]/g, '').toLowerCase()}=${value}`;
}

/** Takes each key away once. */
function leaveOut(parts: readonly ShellPart[], keys: readonly string[]): ShellPart[] {
  const left = new Map<string, number>();
  for (const key of keys) left.set(key, (left.get(key) ?? 0) + 1);
  return parts.filter(({ key, isNaming }) => {
    if (isNaming) return true;
    const count = left.get(key) ?? 0;
    if (count > 0) left.set(key, count - 1);
    return count === 0;
  });
}

function countKeys(parts: readonly ShellPart[]): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { key } of parts) counts.set(key, (counts.get(key) ?? 0) + 1);
  return counts;
}

/** Whether what differs is the letter, or a number that grows by one from item to item. */
function tellPlaceOnly(odd: readonly (readonly ShellPart[])[], lettered: readonly LetteredContent[]): boolean {
  const masked = odd.map((parts, place) =>
    parts.map(({ key }) => maskPlace(key, place, lettered[place]?.letter ?? '')),
  );
  const [first = []] = masked;
  return masked.every(
    (keys) =>
      keys.length === first.length && keys.every((options, at) => options.some((key) => first[at]?.includes(key))),
  );
}

/** A part with its place taken out, in each way in which it could be a place. */
function maskPlace(key: string, place: number, letter: string): string[] {
  const numbered = key.replace(/\d+(?!.*\d)/, (digits) => `#${Number(digits) - place}`);
  const lettered = key.replace(new RegExp(`(?<![a-z])${letter}(?![a-z])`, 'gi'), '#');
  return [numbered, lettered].filter((masked) => masked !== key);
}
