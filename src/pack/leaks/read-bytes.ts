const UTF8 = new TextDecoder('utf-8');
const UTF16 = { little: new TextDecoder('utf-16le'), big: new TextDecoder('utf-16be') };

/** A text file's bytes as text: UTF-8, or UTF-16 where it begins with the mark of it. */
export function decodeTextFile(bytes: Uint8Array): string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return UTF16.little.decode(bytes);
  if (first === 0xfe && second === 0xff) return UTF16.big.decode(bytes);
  return UTF8.decode(bytes);
}

const CHUNK = 8192;

/** Bytes as a text with one character for each, of the same number. */
export function readLatin1(bytes: Uint8Array): string {
  let text = '';
  for (let at = 0; at < bytes.length; at += CHUNK) text += String.fromCharCode(...bytes.subarray(at, at + CHUNK));
  return text;
}

/** A run of bytes that reads as text. */
export interface ByteRun {
  readonly text: string;
  /** Offset of its first byte. */
  readonly at: number;
  readonly byteLength: number;
}

/** Six characters that can be printed, in UTF-8: fewer come together by chance all the time. */
const UTF8_RUN =
  /(?:[ -~\t\r\n]|[\u00c2-\u00df][\u0080-\u00bf]|[\u00e0-\u00ef][\u0080-\u00bf]{2}|[\u00f0-\u00f4][\u0080-\u00bf]{3}){6,}/g;

/** The same in UTF-16 of letters that are one byte long elsewhere: every second byte is zero (or a control). */
const UTF16_RUN = /(?:[ -~\u00a0-\u00ff][^\u0020-\uffff]){6,}[ -~]?/g;

/** All that reads as text in the bytes of a file, whatever the file is. @param latin1 The bytes by `readLatin1`. */
export function listByteRuns(bytes: Uint8Array, latin1: string): ByteRun[] {
  const runs: ByteRun[] = [];
  for (const { 0: run, index } of latin1.matchAll(UTF8_RUN)) {
    runs.push({ text: UTF8.decode(bytes.subarray(index, index + run.length)), at: index, byteLength: run.length });
  }
  for (const { 0: run, index } of latin1.matchAll(UTF16_RUN)) {
    // With the zero first, the last letter's zero stands before it.
    for (const letters of [run.slice(0, run.length & ~1), run]) {
      runs.push({ text: letters.replace(/[^\u0020-\uffff]/g, ''), at: index, byteLength: run.length });
    }
  }
  return runs;
}

/** All that reads as text in some bytes, in one; empty where nothing does. */
export function readBytesAsText(bytes: Uint8Array): string {
  return listByteRuns(bytes, readLatin1(bytes))
    .map(({ text }) => text)
    .join('\n');
}
