import { type PdfWord, pdfWord } from './pdf-value.ts';

/** A text as a string of a PDF file: plain where it is ASCII, else UTF-16 (ISO 32000-1, 7.9.2.2). */
export function writePdfText(text: string): PdfWord {
  if (/^[ -~]*$/.test(text)) return pdfWord(`(${text.replace(/[\\()]/g, '\\$&')})`);
  const units = Array.from({ length: text.length }, (_, index) => text.charCodeAt(index));
  return pdfWord(`<${['FEFF', ...units.map((unit) => unit.toString(16).toUpperCase().padStart(4, '0'))].join('')}>`);
}

const ESCAPES: Readonly<Record<string, string>> = { n: '\n', r: '\r', t: '\t', b: '\b', f: '\f' };

/** The bytes of a string as it is written, a character for each; undefined for what is no string. */
export function readPdfBytes(word: PdfWord): string | undefined {
  const { written } = word;
  if (written.startsWith('<')) {
    const digits = written.slice(1, -1).replace(/[^0-9A-Fa-f]/g, '');
    return (digits.match(/..?/g) ?? [])
      .map((pair) => String.fromCharCode(Number.parseInt(pair.padEnd(2, '0'), 16)))
      .join('');
  }
  if (!written.startsWith('(')) return undefined;
  return written.slice(1, -1).replace(/\\(?:([0-7]{1,3})|(\r\n|[\s\S]))/g, (_, octal?: string, letter = '') => {
    if (octal !== undefined) return String.fromCharCode(Number.parseInt(octal, 8) & 0xff);
    // A line that ends in a backslash goes on in the next.
    return ESCAPES[letter] ?? letter.replace(/[\r\n]/g, '');
  });
}

/** The text of a string as Chromium writes it: ASCII, or UTF-16 behind its mark. Empty for what is no string. */
export function readPdfText(word: PdfWord): string {
  const bytes = readPdfBytes(word) ?? '';
  if (!bytes.startsWith('\u00fe\u00ff')) return bytes;
  const units: number[] = [];
  for (let at = 2; at + 1 < bytes.length; at += 2) units.push(bytes.charCodeAt(at) * 256 + bytes.charCodeAt(at + 1));
  return units.map((unit) => String.fromCharCode(unit)).join('');
}
