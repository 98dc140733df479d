import { type FilePart, readUint, readUnpacked, type Unpack } from './file-part.ts';

const ZIP_END = 'PK\u0005\u0006';
const ZIP_ENTRY = 'PK\u0001\u0002';

/** What an archive says of its files, and the files in it. */
export function listZipParts(bytes: Uint8Array, latin1: string, unpack: Unpack): FilePart[] {
  const parts: FilePart[] = [];
  for (let at = latin1.indexOf(ZIP_ENTRY); at !== -1; at = latin1.indexOf(ZIP_ENTRY, at + 4)) {
    const nameEnd = at + 46 + readUint(bytes, at + 28, 2, 'little');
    const comment = nameEnd + readUint(bytes, at + 30, 2, 'little');
    const name = latin1.slice(at + 46, nameEnd);
    parts.push({ name: 'archive’s list of files', from: at + 46, to: nameEnd });
    parts.push({
      name: `comment on ${name} in the archive`,
      from: comment,
      to: comment + readUint(bytes, at + 32, 2, 'little'),
    });
    parts.push(readZipEntry(bytes, at, name, unpack));
  }
  const end = latin1.lastIndexOf(ZIP_END);
  if (end !== -1 && end + 22 < bytes.length) {
    parts.push({ name: 'archive comment', from: end + 22, to: bytes.length });
  }
  return parts;
}

/** @param at Offset of the entry in the list. */
function readZipEntry(bytes: Uint8Array, at: number, name: string, unpack: Unpack): FilePart {
  const local = readUint(bytes, at + 42, 4, 'little');
  const from = local + 30 + readUint(bytes, local + 26, 2, 'little') + readUint(bytes, local + 28, 2, 'little');
  const to = from + readUint(bytes, at + 20, 4, 'little');
  const isPacked = readUint(bytes, at + 10, 2, 'little') === 8;
  const part = { name: `file ${name} in the archive`, from, to };
  return isPacked ? { ...part, unpacked: readUnpacked(unpack(bytes.subarray(from, to), 'deflate')) } : part;
}
