import type { PdfObject, PdfValue } from './pdf-value.ts';

/** Four bytes that no text has tell programs which carry files that this is none (ISO 32000-1, 7.5.2). */
const HEADER = '%PDF-1.7\n%\u00c2\u00b5\u00c2\u00b6\n';

/**
 * Writes a PDF file. The same objects give the same bytes.
 * @param objects Numbered from 1 on, each number once, in any order.
 */
export function renderPdf(
  objects: readonly PdfObject[],
  trailer: Readonly<Record<'Root' | 'Info', number>>,
): Uint8Array {
  const parts: Uint8Array[] = [];
  const offsets: number[] = [];
  let length = 0;
  const write = (part: string | Uint8Array) => {
    const bytes = typeof part === 'string' ? toBytes(part) : part;
    parts.push(bytes);
    length += bytes.length;
  };
  write(HEADER);
  for (const { number, value, stream } of objects) {
    offsets[number] = length;
    write(`${number} 0 obj\n${renderValue(value)}`);
    if (stream !== undefined) {
      write('\nstream\n');
      write(stream);
      write('\nendstream');
    }
    write('\nendobj\n');
  }
  const table = length;
  write(renderTable(offsets));
  const { Root, Info } = trailer;
  write(`trailer\n<</Size ${offsets.length} /Root ${Root} 0 R /Info ${Info} 0 R>>\nstartxref\n${table}\n%%EOF\n`);
  return join(parts, length);
}

function renderTable(offsets: readonly number[]): string {
  const lines = Array.from({ length: offsets.length - 1 }, (_, index) => {
    const offset = offsets[index + 1];
    if (offset === undefined) throw new Error(`The PDF has no object ${index + 1}.`);
    return `${String(offset).padStart(10, '0')} 00000 n \n`;
  });
  return `xref\n0 ${offsets.length}\n0000000000 65535 f \n${lines.join('')}`;
}

function renderValue(value: PdfValue): string {
  switch (value.type) {
    case 'word':
      return value.written;
    case 'reference':
      return `${value.number} 0 R`;
    case 'array':
      return `[${value.items.map(renderValue).join(' ')}]`;
    case 'dictionary':
      return `<<${[...value.entries].map(([key, entry]) => `/${key} ${renderValue(entry)}`).join('\n')}>>`;
  }
}

/** A text that has a character for each byte. */
function toBytes(text: string): Uint8Array {
  return Uint8Array.from(text, (letter) => letter.charCodeAt(0));
}

function join(parts: readonly Uint8Array[], length: number): Uint8Array {
  const whole = new Uint8Array(length);
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
