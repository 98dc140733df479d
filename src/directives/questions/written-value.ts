import type { SourcePlace } from '../../content/diagnostic.ts';
import { quote } from '../../content/wording.ts';
import type { WrittenDirective } from '../definition.ts';

/** A value as an author wrote it, for messages. */
export interface WrittenValue {
  readonly text: string;
  /** What messages point at. */
  readonly place: SourcePlace;
  /** What messages call it; where it stands in a questions file, the question too. */
  readonly called: string;
}

/** The value of an attribute; undefined where it was left out. */
export function readWrittenValue(written: WrittenDirective, name: string): WrittenValue | undefined {
  const text = written.attributes[name]?.normalize('NFC').trim();
  if (text === undefined) return undefined;
  return { text, place: written.attributePlace(name), called: quote(`${name}="${text}"`) };
}
