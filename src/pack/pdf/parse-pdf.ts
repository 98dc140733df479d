import { readLatin1 } from '../leaks/read-bytes.ts';
import { PdfFormatError } from './pdf-format-error.ts';
import { findEntry, findNumber, type PdfObject, type PdfValue } from './pdf-value.ts';
import { createPdfReader } from './read-pdf-value.ts';

/** The objects of a PDF file by their numbers, in the order of the file. */
export interface PdfDocument {
  readonly objects: ReadonlyMap<number, PdfObject>;
  /** The value that a reference stands for; any other value is itself. Undefined where there is no such object. */
  find(value: PdfValue | undefined): PdfValue | undefined;
  readonly trailer: PdfValue;
}

/**
 * Reads a PDF file in the form that Chromium writes: one table of all objects, and none of them within another (ISO
 * 32000-1, 7.5.4). Streams stay packed.
 * @throws PdfFormatError for a file in another form.
 */
export function parsePdf(bytes: Uint8Array): PdfDocument {
  const text = readLatin1(bytes);
  if (!text.startsWith('%PDF-')) throw new PdfFormatError('a file that does not begin as a PDF does');
  const { offsets, trailer } = readTable(text);
  const objects = new Map<number, PdfObject>();
  for (const [number, offset] of offsets) objects.set(number, readObject(bytes, text, number, offset));
  return {
    objects,
    trailer,
    find: (value) => (value?.type === 'reference' ? objects.get(value.number)?.value : value),
  };
}

/** Offsets of the objects by number, in the order of the file. */
function readTable(text: string): { readonly offsets: [number, number][]; readonly trailer: PdfValue } {
  const start = /startxref\s+(\d+)\s+%%EOF\s*$/.exec(text);
  if (start === null) throw new PdfFormatError('a file without its end');
  const reader = createPdfReader(text, Number(start[1]));
  if (!reader.takes('xref')) throw new PdfFormatError('a packed list of objects');
  const offsets: [number, number][] = [];
  while (!reader.takes('trailer')) {
    const first = readWhole(reader.readValue());
    const count = readWhole(reader.readValue());
    for (let number = first; number < first + count; number += 1) {
      const offset = readWhole(reader.readValue());
      reader.readValue();
      if (reader.takes('n')) offsets.push([number, offset]);
      else if (!reader.takes('f')) throw new PdfFormatError('a list of objects with an odd entry');
    }
  }
  const trailer = reader.readValue();
  if (findEntry(trailer, 'Prev') !== undefined)
    throw new PdfFormatError('a file that was changed after it was written');
  if (findEntry(trailer, 'Encrypt') !== undefined) throw new PdfFormatError('an encrypted file');
  return { offsets: offsets.sort(([, one], [, other]) => one - other), trailer };
}

function readWhole(value: PdfValue): number {
  if (value.type === 'word' && /^\d+$/.test(value.written)) return Number(value.written);
  throw new PdfFormatError('a list of objects without its numbers');
}

function readObject(bytes: Uint8Array, text: string, number: number, offset: number): PdfObject {
  const head = /(\d+)\s+\d+\s+obj/y;
  head.lastIndex = offset;
  if (head.exec(text)?.[1] !== String(number)) throw new PdfFormatError(`no object ${number} where it should be`);
  const reader = createPdfReader(text, head.lastIndex);
  const value = reader.readValue();
  if (!reader.takes('stream')) return { number, value };
  const length = findNumber(value, 'Length');
  if (length === undefined) throw new PdfFormatError(`an object ${number} without its length`);
  const from = reader.at + (text.startsWith('\r\n', reader.at) ? 2 : 1);
  return { number, value, stream: bytes.subarray(from, from + length) };
}
