import { isUtf8 } from 'node:buffer';
import { readFileSync } from 'node:fs';
import type { SourcePlace } from '../content/diagnostic.ts';
import type { SourceFile } from '../content/types.ts';
import { findFileError } from './file-error.ts';
import { showPath } from './show-path.ts';

/** The bytes of a file. @throws FileError when the system refuses; its own error does not always name the file. */
export function readBytes(path: string): Buffer {
  try {
    return readFileSync(path);
  } catch (error) {
    throw findFileError(error, path) ?? error;
  }
}

/**
 * Reads a text file. One that is not UTF-8 comes without text and with the fault in its place: what stands in it is not
 * known, and guessing would publish wrong letters in silence.
 * @throws FileError when the system refuses.
 */
export function readSource(path: string): SourceFile {
  const bytes = readBytes(path);
  const shown = showPath(path);
  // A zero byte is allowed in UTF-8 and stands in no text: it comes from UTF-16, or from a file that is no text.
  if (isUtf8(bytes) && !bytes.includes(0)) return { path: shown, text: bytes.toString('utf8') };
  const { line, column, byte } = findOddByte(bytes);
  const hex = byte.toString(16).toUpperCase().padStart(2, '0');
  return {
    path: shown,
    text: '',
    fault: {
      rule: 'text-encoding',
      severity: 'error',
      place: { file: shown, line, column },
      message: `This file is not saved as UTF-8: the byte \`${hex}\` stands here; save it again as UTF-8.`,
      found: hex,
      expected: 'UTF-8',
    },
  };
}

const LINE_FEED = 0x0a;
const CARRIAGE_RETURN = 0x0d;

/** The first byte that is no UTF-8, or is zero, and its place. There is one. */
function findOddByte(bytes: Uint8Array): Pick<SourcePlace, 'line' | 'column'> & { readonly byte: number } {
  let line = 1;
  let from = 0;
  for (let at = 0; at <= bytes.length; at += 1) {
    const byte = bytes[at];
    if (byte !== LINE_FEED && byte !== CARRIAGE_RETURN && byte !== undefined) continue;
    // No letter of UTF-8 holds the byte of a line's end, so that each line can be judged alone.
    const odd = findOddInLine(bytes.subarray(from, at));
    if (odd !== undefined) return { line, ...odd };
    if (byte !== CARRIAGE_RETURN || bytes[at + 1] !== LINE_FEED) line += 1;
    from = at + 1;
  }
  throw new Error('A text was found to be UTF-8 after all.');
}

function findOddInLine(bytes: Uint8Array): { readonly column: number; readonly byte: number } | undefined {
  let column = 1;
  for (let at = 0; at < bytes.length; ) {
    const letter = findLetter(bytes, at);
    if (letter === undefined) return { column, byte: bytes[at] ?? 0 };
    column += letter.units;
    at += letter.bytes;
  }
  return undefined;
}

/** How many bytes and UTF-16 code units the letter at an offset takes; undefined when there is none. */
function findLetter(line: Uint8Array, at: number): { readonly bytes: number; readonly units: number } | undefined {
  if (line[at] === 0) return undefined;
  for (let bytes = 1; bytes <= 4; bytes += 1) {
    if (isUtf8(line.subarray(at, at + bytes))) return { bytes, units: bytes === 4 ? 2 : 1 };
  }
  return undefined;
}
