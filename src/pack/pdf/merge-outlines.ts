import { DOCUMENT_NUMBERS } from './document-numbers.ts';
import { writePdfText } from './pdf-text.ts';
import {
  findEntry,
  findNumber,
  type PdfObject,
  type PdfValue,
  pdfDictionary,
  pdfReference,
  pdfWord,
} from './pdf-value.ts';
import { findAnchor, type Placing } from './place-part.ts';
import type { Changes, PlacedPart } from './placed-part.ts';

/** The outline of a document. */
export interface MergedOutline {
  readonly root: PdfValue;
  /** Entries that no part has. */
  readonly entries: readonly PdfObject[];
  /** What becomes different in the parts' own entries. */
  readonly changes: Changes;
}

/** An entry for a part: its only main heading, or one made for it, above all of its headings. */
interface PartEntry {
  readonly number: number;
  /** Of one that is made. */
  readonly value?: Record<string, PdfValue | undefined>;
  readonly below: Changes;
  /** How many entries stand below it. */
  readonly count: number;
}

/**
 * Makes one outline of those of the parts: an entry for each part, called by its title and closed, so that a long document
 * shows what it consists of at a glance.
 */
export function mergeOutlines(placed: readonly PlacedPart[], nextNumber: () => number): MergedOutline {
  const parts = placed.map(({ part, placing }) =>
    part.headings.length === 1 ? useHeading(part, placing) : makeEntry(part, placing, nextNumber),
  );
  const changes = new Map<number, Readonly<Record<string, PdfValue | undefined>>>();
  const entries: PdfObject[] = [];
  for (const [index, { number, value, below, count }] of parts.entries()) {
    const links = {
      Title: writePdfText(placed[index]?.part.title ?? ''),
      Parent: pdfReference(DOCUMENT_NUMBERS.outline),
      Prev: refer(parts[index - 1]?.number),
      Next: refer(parts[index + 1]?.number),
      Count: count === 0 ? undefined : pdfWord(-count),
    };
    if (value === undefined) changes.set(number, links);
    else entries.push({ number, value: pdfDictionary({ ...links, ...value }) });
    for (const [child, change] of below) changes.set(child, change);
  }
  for (const { part, placing } of placed) {
    for (const [heading, title] of part.headingTitles) {
      const number = placing.numberOf(heading);
      if (number !== undefined) changes.set(number, { Title: writePdfText(title), ...changes.get(number) });
    }
  }
  const root = pdfDictionary({
    Type: pdfWord('/Outlines'),
    First: refer(parts[0]?.number),
    Last: refer(parts.at(-1)?.number),
    Count: pdfWord(parts.length),
  });
  return { root, entries, changes };
}

function useHeading({ headings: [heading = 0], document }: PlacedPart['part'], { numberOf }: Placing): PartEntry {
  const number = numberOf(heading);
  if (number === undefined) throw new Error('A heading has no place in the document.');
  const count = Math.abs(findNumber(document.objects.get(heading)?.value, 'Count') ?? 0);
  return { number, below: new Map(), count };
}

function makeEntry(part: PlacedPart['part'], placing: Placing, nextNumber: () => number): PartEntry {
  const number = nextNumber();
  const { document, catalog, headings } = part;
  const numbers = headings.flatMap((heading) => placing.numberOf(heading) ?? []);
  const outline = document.find(findEntry(catalog, 'Outlines'));
  return {
    number,
    value: {
      Dest: findAnchor(part, placing, ''),
      First: refer(numbers[0]),
      Last: refer(numbers.at(-1)),
    },
    below: new Map(numbers.map((each) => [each, { Parent: pdfReference(number) }])),
    count: Math.abs(findNumber(outline, 'Count') ?? 0),
  };
}

function refer(number: number | undefined): PdfValue | undefined {
  return number === undefined ? undefined : pdfReference(number);
}
