import { crc32, inflateRawSync } from 'node:zlib';

/** A file of an archive as its directory lists it. */
export interface ZipEntry {
  readonly path: string;
  readonly bytes: Uint8Array;
  /** Date and time as the archive holds them, without a zone. */
  readonly stamp: string;
}

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const LOCAL = 0x04034b50;

/**
 * Reads a ZIP archive by its central directory (PKWARE APPNOTE 6.3, sections 4.3.12 and 4.3.16), apart from the library
 * that writes them. Throws for a checksum, a size or a signature that is wrong.
 */
export function readZip(archive: Uint8Array): ZipEntry[] {
  const data = Buffer.from(archive);
  const end = data.length - 22;
  if (data.readUInt32LE(end) !== END) throw new Error('The archive has no end record without a comment.');
  const count = data.readUInt16LE(end + 10);
  const entries: ZipEntry[] = [];
  let at = data.readUInt32LE(end + 16);
  for (let index = 0; index < count; index++) {
    if (data.readUInt32LE(at) !== ENTRY) throw new Error(`Entry ${index + 1} has no signature.`);
    const nameLength = data.readUInt16LE(at + 28);
    const path = data.toString('utf8', at + 46, at + 46 + nameLength);
    entries.push({
      path,
      bytes: readBytes(data, at),
      stamp: readStamp(data.readUInt16LE(at + 14), data.readUInt16LE(at + 12)),
    });
    at += 46 + nameLength + data.readUInt16LE(at + 30) + data.readUInt16LE(at + 32);
  }
  return entries;
}

function readBytes(data: Buffer, entry: number): Uint8Array {
  const [method, checksum] = [data.readUInt16LE(entry + 10), data.readUInt32LE(entry + 16)];
  const [packed, size] = [data.readUInt32LE(entry + 20), data.readUInt32LE(entry + 24)];
  const local = data.readUInt32LE(entry + 42);
  if (data.readUInt32LE(local) !== LOCAL) throw new Error('A file has no signature.');
  const from = local + 30 + data.readUInt16LE(local + 26) + data.readUInt16LE(local + 28);
  const content = data.subarray(from, from + packed);
  const bytes = method === 0 ? content : inflateRawSync(content);
  if (bytes.length !== size || crc32(bytes) !== checksum) throw new Error('A file is not what its entry says.');
  return new Uint8Array(bytes);
}

/** Dates and times of MS-DOS. */
function readStamp(date: number, time: number): string {
  const pad = (value: number) => String(value).padStart(2, '0');
  return `${(date >> 9) + 1980}-${pad((date >> 5) & 15)}-${pad(date & 31)} ${pad(time >> 11)}:${pad((time >> 5) & 63)}`;
}
