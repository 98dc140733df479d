import type { Unpack } from '../pack/leaks/file-part.ts';

/** More text than anybody packs into a picture. */
const MOST_BYTES = 16_000_000;

/** Unpacks by zlib, which is loaded when it is first needed. */
export const unpack: Unpack = (bytes, format) => {
  const zlib = process.getBuiltinModule('node:zlib');
  const options = { maxOutputLength: MOST_BYTES };
  try {
    return format === 'zlib' ? zlib.inflateSync(bytes, options) : zlib.inflateRawSync(bytes, options);
  } catch {
    return undefined;
  }
};
