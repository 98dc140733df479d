/**
 * A value in a PDF file, by ISO 32000-1, 7.3. Numbers, names, strings and keywords stay as they were written, a character
 * for each byte: what is not looked into is not changed.
 */
export type PdfValue = PdfWord | PdfReference | PdfArray | PdfDictionary;

export interface PdfWord {
  readonly type: 'word';
  readonly written: string;
}

/** Stands for the object of that number. */
export interface PdfReference {
  readonly type: 'reference';
  readonly number: number;
}

export interface PdfArray {
  readonly type: 'array';
  readonly items: readonly PdfValue[];
}

/** Keys are names without their slash, as written. */
export interface PdfDictionary {
  readonly type: 'dictionary';
  readonly entries: ReadonlyMap<string, PdfValue>;
}

/** A value that others point to; with `stream`, the bytes that it describes. */
export interface PdfObject {
  readonly number: number;
  readonly value: PdfValue;
  readonly stream?: Uint8Array;
}

export function pdfWord(written: string | number): PdfWord {
  return { type: 'word', written: String(written) };
}

/** @param name Without a slash; of letters, digits and hyphens alone, or already written by the rules for names. */
export function pdfName(name: string): PdfWord {
  return pdfWord(`/${name}`);
}

export function pdfReference(number: number): PdfReference {
  return { type: 'reference', number };
}

export function pdfArray(items: readonly PdfValue[]): PdfArray {
  return { type: 'array', items };
}

/** Entries whose value is undefined are left out. */
export function pdfDictionary(entries: Readonly<Record<string, PdfValue | undefined>>): PdfDictionary {
  const given = Object.entries(entries).flatMap(([key, value]) => (value === undefined ? [] : [[key, value] as const]));
  return { type: 'dictionary', entries: new Map(given) };
}

/** The entry of a dictionary; undefined for all that has none. */
export function findEntry(value: PdfValue | undefined, key: string): PdfValue | undefined {
  return value?.type === 'dictionary' ? value.entries.get(key) : undefined;
}

/** The entry of a dictionary as a number; undefined for one that is none. */
export function findNumber(value: PdfValue | undefined, key: string): number | undefined {
  const entry = findEntry(value, key);
  return entry?.type === 'word' && /^[+-]?\d+$/.test(entry.written) ? Number(entry.written) : undefined;
}

/** Whether an entry of a dictionary is a name. */
export function hasName(value: PdfValue | undefined, key: string, name: string): boolean {
  const entry = findEntry(value, key);
  return entry?.type === 'word' && entry.written === `/${name}`;
}
