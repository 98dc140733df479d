import { nameHeadings, type OutlineEntry } from './name-headings.ts';
import { type PdfDocument, parsePdf } from './parse-pdf.ts';
import { PdfFormatError } from './pdf-format-error.ts';
import { readPdfBytes, readPdfText } from './pdf-text.ts';
import { findEntry, findNumber, hasName, type PdfObject, type PdfValue } from './pdf-value.ts';

/** A page of the pack as a browser has printed it. */
export interface PdfPart {
  /** Path of the page in the pack. */
  readonly path: string;
  /** Title of the page: a document of several parts lists them by it. */
  readonly title: string;
  /** The page's own headings in order, each as the texts in it, shown on paper or not. */
  readonly headings: readonly (readonly string[])[];
  readonly bytes: Uint8Array;
}

/** A place in the pack: a page, and an anchor on it or nothing. */
export interface PagePlace {
  readonly path: string;
  readonly anchor: string;
}

/** What a link leads to: a place in the pack, or `outside` of it; undefined for what a reader of a PDF cannot reach. */
export type ReadAddress = (address: string) => PagePlace | 'outside' | undefined;

/** A printed page, opened to become part of a document. Numbers are those of its own file. */
export interface OpenedPart {
  readonly title: string;
  readonly document: PdfDocument;
  readonly catalog: PdfValue;
  readonly pageTree: number;
  readonly pageCount: number;
  readonly firstPage: number;
  /** The tree of tags. */
  readonly tags: PdfValue;
  /** Entries of the headings' outline that stand in no other; there may be none. */
  readonly headings: readonly number[];
  /** Better titles for entries of the outline, by their numbers. */
  readonly headingTitles: ReadonlyMap<number, string>;
  /** What links within the page lead to, by name as it is written, without the slash. */
  readonly anchors: ReadonlyMap<string, PdfValue>;
  /** Objects of the file itself, which those of the whole document replace. */
  readonly replaced: ReadonlySet<number>;
  /** Links that lead to nothing in the document nor outside of the pack. */
  readonly droppedLinks: ReadonlySet<number>;
}

/**
 * @param isInDocument Whether a page of the pack is part of the document.
 * @throws PdfFormatError for a file that has no tags or is written in another form than Chromium's.
 */
export function openPart(
  { title, headings: texts, bytes }: PdfPart,
  readAddress: ReadAddress,
  isInDocument: (path: string) => boolean,
): OpenedPart {
  const document = parsePdf(bytes);
  const { find, objects, trailer } = document;
  const catalog = find(findEntry(trailer, 'Root'));
  const pageTree = findReference(catalog, 'Pages');
  const tags = find(findEntry(catalog, 'StructTreeRoot'));
  if (catalog === undefined || pageTree === undefined) throw new PdfFormatError('a file without pages');
  if (tags === undefined) throw new PdfFormatError('a file without tags');
  const anchors = find(findEntry(catalog, 'Dests'));
  const headings = listBeside(document, findReference(find(findEntry(catalog, 'Outlines')), 'First'));
  return {
    title,
    document,
    catalog,
    pageTree,
    pageCount: findNumber(objects.get(pageTree)?.value, 'Count') ?? 0,
    firstPage: findFirstPage(document, pageTree),
    tags,
    headings,
    headingTitles: nameHeadings(
      headings.flatMap((heading) => listEntries(document, heading)),
      texts,
    ),
    anchors: anchors?.type === 'dictionary' ? anchors.entries : new Map(),
    replaced: listReplaced(document, catalog, tags),
    droppedLinks: new Set(
      [...objects.values()]
        .filter((object) => leadsNowhere(object, document, readAddress, isInDocument))
        .map(({ number }) => number),
    ),
  };
}

/** The number of the object that an entry refers to. */
export function findReference(value: PdfValue | undefined, key: string): number | undefined {
  const entry = findEntry(value, key);
  return entry?.type === 'reference' ? entry.number : undefined;
}

/** The address that a link on a page leads to; undefined for all that is no such link. */
export function findAddress(value: PdfValue, { find }: Pick<PdfDocument, 'find'>): string | undefined {
  if (!hasName(value, 'Subtype', 'Link')) return undefined;
  const action = find(findEntry(value, 'A'));
  const address = hasName(action, 'S', 'URI') ? find(findEntry(action, 'URI')) : undefined;
  return address?.type === 'word' ? readPdfBytes(address) : undefined;
}

function findFirstPage({ objects }: PdfDocument, pageTree: number): number {
  let number = pageTree;
  // Trees of pages are a few branches deep; a faulty one that leads back to itself would have no end.
  for (let depth = 0; depth < 32; depth += 1) {
    const node = objects.get(number)?.value;
    if (hasName(node, 'Type', 'Page')) return number;
    const kids = findEntry(node, 'Kids');
    const first = kids?.type === 'array' ? kids.items[0] : undefined;
    if (first?.type !== 'reference') break;
    number = first.number;
  }
  throw new PdfFormatError('a file without a first page');
}

/** An entry of the outline and those that follow it below the same one. */
function listBeside({ objects }: PdfDocument, first: number | undefined): number[] {
  const beside: number[] = [];
  for (let next = first; next !== undefined && !beside.includes(next); ) {
    beside.push(next);
    next = findReference(objects.get(next)?.value, 'Next');
  }
  return beside;
}

/** An entry of the outline and all below it, in the order of the page. */
function listEntries(document: PdfDocument, number: number): OutlineEntry[] {
  const entry = document.objects.get(number)?.value;
  const title = document.find(findEntry(entry, 'Title'));
  return [
    { number, title: title?.type === 'word' ? readPdfText(title) : '' },
    ...listBeside(document, findReference(entry, 'First')).flatMap((child) => listEntries(document, child)),
  ];
}

function listReplaced({ find, trailer }: PdfDocument, catalog: PdfValue, tags: PdfValue): Set<number> {
  const replaced = new Set<number>();
  const add = (value: PdfValue | undefined): void => {
    if (value?.type !== 'reference' || replaced.has(value.number)) return;
    replaced.add(value.number);
    const kids = find(findEntry(find(value), 'Kids'));
    if (kids?.type === 'array') kids.items.forEach(add);
  };
  for (const key of ['Root', 'Info']) add(findEntry(trailer, key));
  for (const key of ['StructTreeRoot', 'Dests', 'Outlines']) add(findEntry(catalog, key));
  for (const key of ['ParentTree', 'IDTree', 'RoleMap']) add(findEntry(tags, key));
  return replaced;
}

function leadsNowhere(
  { value }: PdfObject,
  document: PdfDocument,
  readAddress: ReadAddress,
  isInDocument: (path: string) => boolean,
): boolean {
  const address = findAddress(value, document);
  if (address === undefined) return false;
  const place = readAddress(address);
  return place !== 'outside' && (place === undefined || !isInDocument(place.path));
}
