import { findAddress, findReference, type OpenedPart, type PagePlace } from './open-part.ts';
import {
  findEntry,
  findNumber,
  hasName,
  type PdfDictionary,
  type PdfValue,
  pdfArray,
  pdfName,
  pdfReference,
  pdfWord,
} from './pdf-value.ts';

/** How a part stands in the whole document. */
export interface Placing {
  /** The number that an object of the part has in the document; undefined for one that is not in it. */
  numberOf(number: number): number | undefined;
  /** The key in the document by which a page or a link finds its tags; undefined where it has none. */
  tagKeyOf(key: number): number | undefined;
  /** The name in the document of a tag that others name. @param written As it is written in the part. */
  nameOf(written: string): string;
  /** Where a link to another part leads; undefined outside of the pack. */
  findPlace(address: string): PdfValue | undefined;
}

const NOTHING = pdfWord('null');

/** A value of a part as it is in the document; undefined for one that is left out. */
export function placeValue(value: PdfValue, part: OpenedPart, placing: Placing): PdfValue | undefined {
  switch (value.type) {
    case 'word':
      return value;
    case 'reference': {
      if (part.droppedLinks.has(value.number)) return undefined;
      const number = placing.numberOf(value.number);
      return number === undefined ? NOTHING : pdfReference(number);
    }
    case 'array':
      return pdfArray(value.items.flatMap((item) => placeValue(item, part, placing) ?? []));
    case 'dictionary':
      return isOfDroppedLink(value, part) ? undefined : placeDictionary(value, part, placing);
  }
}

/** Where a link within a part leads: a name is looked up; one that is not known leads to the first page. */
export function findAnchor(part: OpenedPart, { numberOf }: Pick<Placing, 'numberOf'>, anchor: string): PdfValue {
  const found = part.document.find(part.anchors.get(anchor));
  const place = found?.type === 'array' ? found.items : [];
  const [page, ...view] = place;
  const number = numberOf(page?.type === 'reference' ? page.number : part.firstPage);
  const whole = [pdfName('XYZ'), NOTHING, NOTHING, NOTHING];
  return pdfArray([number === undefined ? NOTHING : pdfReference(number), ...(place.length === 0 ? whole : view)]);
}

/** An anchor of HTML as the name of a place is written in a PDF file (ISO 32000-1, 7.3.5). */
export function writeAnchor({ anchor }: PagePlace): string {
  const toEscape = (byte: number) => `#${byte.toString(16).toUpperCase().padStart(2, '0')}`;
  return [...new TextEncoder().encode(anchor)]
    .map((byte) => (/[\w.:-]/.test(String.fromCharCode(byte)) ? String.fromCharCode(byte) : toEscape(byte)))
    .join('');
}

function placeDictionary(dictionary: PdfDictionary, part: OpenedPart, placing: Placing): PdfDictionary {
  const entries = new Map<string, PdfValue>();
  for (const [key, entry] of dictionary.entries) {
    const placed = placeEntry(key, entry, dictionary, part, placing);
    if (placed !== undefined) entries.set(placed.key, placed.value);
  }
  return { type: 'dictionary', entries };
}

interface PlacedEntry {
  readonly key: string;
  readonly value: PdfValue;
}

function placeEntry(
  key: string,
  entry: PdfValue,
  dictionary: PdfDictionary,
  part: OpenedPart,
  placing: Placing,
): PlacedEntry | undefined {
  const isTag = hasName(dictionary, 'Type', 'StructElem');
  if (key === 'StructParent' || key === 'StructParents') {
    const tagKey = placing.tagKeyOf(findNumber(dictionary, key) ?? -1);
    return tagKey === undefined ? undefined : { key, value: pdfWord(tagKey) };
  }
  if (key === 'Dest' && entry.type === 'word') {
    return { key, value: findAnchor(part, placing, entry.written.replace(/^\//, '')) };
  }
  if (key === 'ID' && isTag && entry.type === 'word') return { key, value: pdfWord(placing.nameOf(entry.written)) };
  if (key === 'Headers' && entry.type === 'array') return { key, value: pdfArray(entry.items.map(nameTag)) };
  if (key === 'S' && isTag && hasName(dictionary, 'S', 'Link') && hasDroppedLink(dictionary, part)) {
    return { key, value: pdfName('Span') };
  }
  const address = key === 'A' ? findAddress(dictionary, part.document) : undefined;
  const place = address === undefined ? undefined : placing.findPlace(address);
  if (place !== undefined) return { key: 'Dest', value: place };
  const value = placeValue(entry, part, placing);
  return value === undefined ? undefined : { key, value };

  function nameTag(item: PdfValue): PdfValue {
    return item.type === 'word' ? pdfWord(placing.nameOf(item.written)) : item;
  }
}

/** Whether a dictionary stands, among a tag's children, for a link that is left out. */
function isOfDroppedLink(value: PdfValue, { droppedLinks }: OpenedPart): boolean {
  const link = hasName(value, 'Type', 'OBJR') ? findReference(value, 'Obj') : undefined;
  return link !== undefined && droppedLinks.has(link);
}

function hasDroppedLink(tag: PdfDictionary, part: OpenedPart): boolean {
  const children = findEntry(tag, 'K');
  const list = children?.type === 'array' ? children.items : children === undefined ? [] : [children];
  return list.some((child) => isOfDroppedLink(child, part));
}
