import type { OpenedPart } from './open-part.ts';
import type { PdfValue } from './pdf-value.ts';
import type { Placing } from './place-part.ts';

/** A part and how it stands in the whole document. */
export interface PlacedPart {
  readonly part: OpenedPart;
  readonly placing: Placing;
}

/** New entries of dictionaries, by the number of the object in the document; undefined takes an entry away. */
export type Changes = ReadonlyMap<number, Readonly<Record<string, PdfValue | undefined>>>;
