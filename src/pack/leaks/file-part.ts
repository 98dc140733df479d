import { readBytesAsText } from './read-bytes.ts';

/** A part of a picture, a sound or an archive in which something can be written. */
export interface FilePart {
  /** For messages, such as `PNG text chunk Comment`. */
  readonly name: string;
  /** Offsets of its first byte, and of the first one after it. */
  readonly from: number;
  readonly to: number;
  /** What it says, where it is packed in the file. */
  readonly unpacked?: string;
}

/**
 * Unpacks data of RFC 1951 (`deflate`) or RFC 1950 (`zlib`), as the place that runs the core provides it; undefined for
 * data that is faulty, or too much.
 */
export type Unpack = (bytes: Uint8Array, format: 'deflate' | 'zlib') => Uint8Array | undefined;

/** A whole number in some bytes, the high one first (`big`) or the low one. */
export function readUint(bytes: Uint8Array, at: number, length: number, order: 'big' | 'little'): number {
  let value = 0;
  for (let index = 0; index < length; index += 1) {
    value = value * 256 + (bytes[order === 'big' ? at + index : at + length - 1 - index] ?? 0);
  }
  return value;
}

/** What unpacked bytes say; empty where they could not be unpacked. */
export function readUnpacked(bytes: Uint8Array | undefined): string {
  return bytes === undefined ? '' : readBytesAsText(bytes);
}
