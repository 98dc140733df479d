import { PdfFormatError } from './pdf-format-error.ts';
import { type PdfValue, pdfArray, pdfReference, pdfWord } from './pdf-value.ts';

/** What may stand between values: white space and comments. */
const GAP = /(?:[\0\t\n\f\r ]+|%[^\r\n]*)*/y;
const REFERENCE = /(\d+)[\0\t\n\f\r ]+\d+[\0\t\n\f\r ]+R(?![^\0\t\n\f\r ()<>[\]{}/%])/y;
/** Names, numbers, keywords, strings in hexadecimal digits. */
const WORD = /\/[^\0\t\n\f\r ()<>[\]{}/%]*|<[0-9A-Fa-f\0\t\n\f\r ]*>|[^\0\t\n\f\r ()<>[\]{}/%]+/y;

/** Reads values one after another from a file's text, which has a character for each byte. */
export interface PdfReader {
  /** Where the next value begins, or the gap before it. */
  readonly at: number;
  /** @throws PdfFormatError where there is no value. */
  readValue(): PdfValue;
  /** Goes past a text if it is what comes next, after a gap. */
  takes(text: string): boolean;
}

export function createPdfReader(text: string, from: number): PdfReader {
  let at = from;

  const match = (pattern: RegExp): RegExpExecArray | undefined => {
    pattern.lastIndex = at;
    const found = pattern.exec(text);
    if (found === null) return undefined;
    at = pattern.lastIndex;
    return found;
  };

  const takes = (wanted: string): boolean => {
    match(GAP);
    if (!text.startsWith(wanted, at)) return false;
    at += wanted.length;
    return true;
  };

  const readString = (): PdfValue => {
    const begin = at;
    let depth = 0;
    do {
      const letter = text[at];
      if (letter === undefined) throw new PdfFormatError(`a string from byte ${begin} on without its end`);
      if (letter === '\\') at += 1;
      else if (letter === '(') depth += 1;
      else if (letter === ')') depth -= 1;
      at += 1;
    } while (depth > 0);
    return pdfWord(text.slice(begin, at));
  };

  const readDictionary = (): PdfValue => {
    const entries = new Map<string, PdfValue>();
    while (!takes('>>')) {
      const key = readValue();
      if (key.type !== 'word' || !key.written.startsWith('/')) {
        throw new PdfFormatError(`something at byte ${at} where the name of an entry was expected`);
      }
      entries.set(key.written.slice(1), readValue());
    }
    return { type: 'dictionary', entries };
  };

  const readArray = (): PdfValue => {
    const items: PdfValue[] = [];
    while (!takes(']')) items.push(readValue());
    return pdfArray(items);
  };

  const readValue = (): PdfValue => {
    if (takes('<<')) return readDictionary();
    if (takes('[')) return readArray();
    if (text[at] === '(') return readString();
    const reference = match(REFERENCE);
    if (reference !== undefined) return pdfReference(Number(reference[1]));
    const word = match(WORD);
    if (word === undefined) throw new PdfFormatError(`something at byte ${at} that is no value`);
    return pdfWord(word[0]);
  };

  return {
    get at() {
      return at;
    },
    readValue,
    takes,
  };
}
