import type { Element } from 'hast';
import type { BookEntry, NameBook } from './name-book.ts';

/** The entry of a name as `renderName` makes it; nothing for any other element, or a name that nothing is told of. */
export function readName({ tagName, properties, children }: Element, book: NameBook): BookEntry | undefined {
  const [text, more] = children;
  if (tagName !== 'span' || properties['lang'] === undefined || text?.type !== 'text' || more !== undefined) return;
  return book.get(text.value);
}
