import { DOCUMENT_NUMBERS } from './document-numbers.ts';
import { listTagKeys } from './list-tag-keys.ts';
import { writePdfText } from './pdf-text.ts';
import {
  findEntry,
  hasName,
  type PdfObject,
  type PdfValue,
  pdfArray,
  pdfDictionary,
  pdfName,
  pdfReference,
  pdfWord,
} from './pdf-value.ts';
import { placeValue } from './place-part.ts';
import type { Changes, PlacedPart } from './placed-part.ts';

/** Kinds of tags that Chromium writes and PDF 1.7 does not know, and what they are to programs that know no others. */
const LATER_KINDS = { Strong: 'Span', Em: 'Span', Aside: 'Div' } as const;

/**
 * One tree of tags: a document with a part for each page.
 * @param objects All objects of the parts as they are in the document.
 */
export function mergeTags(
  placed: readonly PlacedPart[],
  objects: readonly PdfObject[],
  language: string,
  nextNumber: () => number,
): PdfObject[] {
  const { tags, document, tagKeys } = DOCUMENT_NUMBERS;
  const names = listNames(objects);
  const keys = placed.flatMap(placeTagKeys);
  const namesNumber = names.length === 0 ? undefined : nextNumber();
  const root = pdfDictionary({
    Type: pdfName('StructTreeRoot'),
    K: pdfReference(document),
    ParentTree: pdfReference(tagKeys),
    ParentTreeNextKey: pdfWord(keys.length / 2),
    RoleMap: mergeKinds(placed),
    IDTree: namesNumber === undefined ? undefined : pdfReference(namesNumber),
  });
  const whole = pdfDictionary({
    Type: pdfName('StructElem'),
    S: pdfName('Document'),
    P: pdfReference(tags),
    Lang: writePdfText(language),
    K: pdfArray(placed.flatMap(listRootTags).map(pdfReference)),
  });
  return [
    { number: tags, value: root },
    { number: document, value: whole },
    { number: tagKeys, value: pdfDictionary({ Nums: pdfArray(keys) }) },
    ...(namesNumber === undefined ? [] : [{ number: namesNumber, value: pdfDictionary({ Names: pdfArray(names) }) }]),
  ];
}

/** Each page that was a document by itself becomes a part of one. */
export function listTagChanges(placed: readonly PlacedPart[]): Changes {
  const kinds = placed.flatMap((each) => listRootTags(each).map((number) => [number, { S: pdfName('Part') }] as const));
  return new Map(kinds);
}

function listRootTags({ part, placing }: PlacedPart): number[] {
  const children = findEntry(part.tags, 'K');
  const list = children?.type === 'array' ? children.items : [children];
  return list.flatMap((child) => (child?.type === 'reference' ? (placing.numberOf(child.number) ?? []) : []));
}

function placeTagKeys({ part, placing }: PlacedPart): PdfValue[] {
  return listTagKeys(part).flatMap(([key, value]) => {
    const tagKey = placing.tagKeyOf(key);
    const target = placeValue(value, part, placing);
    return tagKey === undefined || target === undefined ? [] : [pdfWord(tagKey), target];
  });
}

/** Names of tags that others name, each with its tag, in order of the names. */
function listNames(objects: readonly PdfObject[]): PdfValue[] {
  return objects
    .flatMap(({ number, value }) => {
      const name = hasName(value, 'Type', 'StructElem') ? findEntry(value, 'ID') : undefined;
      return name?.type === 'word' ? [{ name, number }] : [];
    })
    .sort((one, other) => (one.name.written < other.name.written ? -1 : 1))
    .flatMap(({ name, number }) => [name, pdfReference(number)]);
}

function mergeKinds(placed: readonly PlacedPart[]): PdfValue {
  const kinds: Record<string, PdfValue> = {};
  for (const [later, kind] of Object.entries(LATER_KINDS)) kinds[later] = pdfName(kind);
  for (const { part } of placed) {
    const own = part.document.find(findEntry(part.tags, 'RoleMap'));
    if (own?.type === 'dictionary') Object.assign(kinds, Object.fromEntries(own.entries));
  }
  return pdfDictionary(kinds);
}
