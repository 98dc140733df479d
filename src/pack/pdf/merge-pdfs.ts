import { DOCUMENT_NUMBERS } from './document-numbers.ts';
import { listTagKeys } from './list-tag-keys.ts';
import { mergeOutlines } from './merge-outlines.ts';
import { listTagChanges, mergeTags } from './merge-tags.ts';
import { type OpenedPart, openPart, type PdfPart, type ReadAddress } from './open-part.ts';
import { writePdfText } from './pdf-text.ts';
import {
  findEntry,
  type PdfObject,
  type PdfValue,
  pdfArray,
  pdfDictionary,
  pdfName,
  pdfReference,
  pdfWord,
} from './pdf-value.ts';
import { findAnchor, type Placing, placeValue, writeAnchor } from './place-part.ts';
import type { Changes, PlacedPart } from './placed-part.ts';
import { renderPdf } from './render-pdf.ts';

/** What a document says of itself. */
export interface PdfHead {
  readonly title: string;
  /** BCP 47 tag. */
  readonly language: string;
  /** The program that made it. */
  readonly maker: string;
  /** Whether programs should propose to print on one side of the paper. */
  readonly isOneSided: boolean;
}

/**
 * Puts printed pages together as one document, in order. Their tags become parts of one tree, their headings one outline,
 * with an entry for each part; links between them lead within the document, links out of the pack stay, all others
 * are left out with nothing said of where they led. It tells no date and no program but the kit and the writer of the
 * pages. The same parts give the same bytes.
 * @param parts One or more, no two of one path.
 * @throws PdfFormatError when a part has no tags, or is not written as Chromium does.
 */
export function mergePdfs(parts: readonly PdfPart[], head: PdfHead, readAddress: ReadAddress): Uint8Array {
  const paths = new Set(parts.map(({ path }) => path));
  const opened = parts.map((part) => openPart(part, readAddress, (path) => paths.has(path)));
  const counter = createCounter(Object.keys(DOCUMENT_NUMBERS).length);
  const names = createNames();
  const placed = placeParts(parts, opened, { counter, names, readAddress });
  const outline = mergeOutlines(placed, counter.next);
  const changes: Changes = new Map([...outline.changes, ...listTagChanges(placed), ...listPageChanges(placed)]);
  const objects = placed.flatMap((each) => placeObjects(each, changes));
  const { catalog, info, pages, outline: outlineNumber } = DOCUMENT_NUMBERS;
  const own: PdfObject[] = [
    { number: catalog, value: renderCatalog(head) },
    { number: info, value: renderInfo(head, opened) },
    { number: pages, value: renderPageTree(placed) },
    { number: outlineNumber, value: outline.root },
    ...mergeTags(placed, objects, head.language, counter.next),
    ...outline.entries,
  ];
  return renderPdf([...own, ...objects], { Root: catalog, Info: info });
}

function renderCatalog({ language, isOneSided }: PdfHead): PdfValue {
  return pdfDictionary({
    Type: pdfName('Catalog'),
    Pages: pdfReference(DOCUMENT_NUMBERS.pages),
    MarkInfo: pdfDictionary({ Marked: pdfWord('true') }),
    StructTreeRoot: pdfReference(DOCUMENT_NUMBERS.tags),
    Outlines: pdfReference(DOCUMENT_NUMBERS.outline),
    // What programs show when the document is opened.
    PageMode: pdfName('UseOutlines'),
    ViewerPreferences: pdfDictionary({
      DisplayDocTitle: pdfWord('true'),
      Duplex: isOneSided ? pdfName('Simplex') : undefined,
    }),
    Lang: writePdfText(language),
  });
}

/** Without the dates and the operating system that Chromium tells. */
function renderInfo({ title, maker }: PdfHead, [first]: readonly OpenedPart[]): PdfValue {
  const writer = findEntry(first?.document.find(findEntry(first.document.trailer, 'Info')), 'Producer');
  return pdfDictionary({ Title: writePdfText(title), Creator: writePdfText(maker), Producer: writer });
}

function renderPageTree(placed: readonly PlacedPart[]): PdfValue {
  return pdfDictionary({
    Type: pdfName('Pages'),
    Count: pdfWord(placed.reduce((sum, { part }) => sum + part.pageCount, 0)),
    Kids: pdfArray(placed.flatMap(({ part, placing }) => placeValue(pdfReference(part.pageTree), part, placing) ?? [])),
  });
}

function listPageChanges(placed: readonly PlacedPart[]): Changes {
  const parent = { Parent: pdfReference(DOCUMENT_NUMBERS.pages) };
  return new Map(
    placed.flatMap(({ part, placing }) => {
      const number = placing.numberOf(part.pageTree);
      return number === undefined ? [] : [[number, parent] as const];
    }),
  );
}

function placeObjects({ part, placing }: PlacedPart, changes: Changes): PdfObject[] {
  return [...part.document.objects.values()].flatMap((object) => {
    const number = part.replaced.has(object.number) ? undefined : placing.numberOf(object.number);
    const value = placeValue(object.value, part, placing);
    if (number === undefined || value === undefined) return [];
    return [{ ...object, number, value: changeEntries(value, changes.get(number)) }];
  });
}

function changeEntries(value: PdfValue, change: Readonly<Record<string, PdfValue | undefined>> | undefined): PdfValue {
  if (change === undefined || value.type !== 'dictionary') return value;
  return pdfDictionary({ ...Object.fromEntries(value.entries), ...change });
}

interface Counter {
  next(): number;
}

function createCounter(last: number): Counter {
  let count = last;
  return {
    next() {
      count += 1;
      return count;
    },
  };
}

/**
 * Names of tags, in the order in which they come. Chromium's own depend on what it did before, and two parts may have the
 * same. They sort as they count.
 */
function createNames(): (part: number, written: string) => string {
  const names = new Map<string, string>();
  return (part, written) => {
    const key = `${part} ${written}`;
    const name = names.get(key) ?? `(tag-${String(names.size + 1).padStart(6, '0')})`;
    names.set(key, name);
    return name;
  };
}

interface Means {
  readonly counter: Counter;
  readonly names: (part: number, written: string) => string;
  readonly readAddress: ReadAddress;
}

function placeParts(
  parts: readonly PdfPart[],
  opened: readonly OpenedPart[],
  { counter, names, readAddress }: Means,
): PlacedPart[] {
  const numbers = opened.map((part) => numberObjects(part, counter));
  const findPlace = (address: string): PdfValue | undefined => {
    const place = readAddress(address);
    if (place === undefined || place === 'outside') return undefined;
    const index = parts.findIndex(({ path }) => path === place.path);
    const part = opened[index];
    return part && findAnchor(part, { numberOf: (number) => numbers[index]?.get(number) }, writeAnchor(place));
  };
  let tagKeys = 0;
  return opened.map((part, index) => {
    // They come in order; their own numbers may have large gaps.
    const keys = new Map(listTagKeys(part).map(([key], place) => [key, tagKeys + place]));
    tagKeys += keys.size;
    const placing: Placing = {
      numberOf: (number) => numbers[index]?.get(number),
      tagKeyOf: (key) => keys.get(key),
      nameOf: (written) => names(index, written),
      findPlace,
    };
    return { part, placing };
  });
}

/** Numbers for all that goes into the document; what is replaced by the document's own has that one's. */
function numberObjects(
  { document, catalog, replaced, droppedLinks }: OpenedPart,
  counter: Counter,
): Map<number, number> {
  const numbers = new Map<number, number>();
  for (const number of document.objects.keys()) {
    if (!replaced.has(number) && !droppedLinks.has(number)) numbers.set(number, counter.next());
  }
  const root = findEntry(catalog, 'StructTreeRoot');
  if (root?.type === 'reference') numbers.set(root.number, DOCUMENT_NUMBERS.document);
  return numbers;
}
