import type { FilePart } from './file-part.ts';

/** Something in a picture or a sound that tells of a person or a place, and is no answer. */
export interface PersonalTrace {
  readonly what: 'a place on the Earth' | 'a person’s name' | 'the number of a device';
  readonly at: number;
}

/** Tags of Exif (CIPA DC-008, from memory) that name a person or a device; GPS is a list of its own. */
const EXIF_TAGS: ReadonlyMap<number, PersonalTrace['what']> = new Map([
  [0x013b, 'a person’s name'],
  [0x9c9d, 'a person’s name'],
  [0xa430, 'a person’s name'],
  [0xa431, 'the number of a device'],
  [0xa435, 'the number of a device'],
]);
const EXIF_MORE = 0x8769;
const EXIF_PLACE = 0x8825;

/** The same in texts: XMP and SVG, PNG, and the place that telephones put in recordings. */
const TEXTS: readonly (readonly [RegExp, PersonalTrace['what']])[] = [
  [/exif:GPSLatitude|\u00a9xyz/, 'a place on the Earth'],
  [/<dc:creator\b[^>]*>(?=[\s\S]{0,200}?[^\s<>][^<>]*<\/)|[ti][EX][XT]tAuthor\b/, 'a person’s name'],
  [/aux:SerialNumber|exifEX:BodySerialNumber/, 'the number of a device'],
];

/** A name of an author in IPTC data (record 2, data set 80, from memory). */
const IPTC_AUTHOR = '\u001c\u0002P';

/** How an Exif list begins, in either order of bytes. */
const EXIF_STARTS = ['II*\0', 'MM\0*'];

/**
 * What a file tells of people and places, each kind once.
 * @param file The file by `readLatin1`, or as text.
 */
export function findPersonalTraces(file: string, parts: readonly FilePart[]): PersonalTrace[] {
  const traces: PersonalTrace[] = [];
  for (const [pattern, what] of TEXTS) {
    const found = pattern.exec(file);
    if (found !== null) traces.push({ what, at: found.index });
  }
  for (const { name, from, to } of parts) {
    const part = file.slice(from, to);
    const author = name === 'IPTC data' ? part.indexOf(IPTC_AUTHOR) : -1;
    if (author !== -1) traces.push({ what: 'a person’s name', at: from + author });
    if (!/exif/i.test(name)) continue;
    const start = Math.max(...EXIF_STARTS.map((mark) => part.indexOf(mark)));
    if (start !== -1) traces.push(...listExifTraces(file, from + start, to));
  }
  return traces.filter(({ what }, index) => traces.findIndex((other) => other.what === what) === index);
}

function listExifTraces(latin1: string, start: number, end: number): PersonalTrace[] {
  const isBig = latin1.startsWith('MM', start);
  const read = (at: number, length: number) => {
    let value = 0;
    for (let index = 0; index < length; index += 1) {
      const code = latin1.charCodeAt(isBig ? at + index : at + length - 1 - index);
      value = value * 256 + (Number.isNaN(code) ? 0 : code);
    }
    return value;
  };
  const traces: PersonalTrace[] = [];
  const readList = (at: number) => {
    const count = at + 2 > end ? 0 : Math.min(read(at, 2), (end - at) / 12);
    for (let index = 0; index < count; index += 1) {
      const entry = at + 2 + 12 * index;
      const tag = read(entry, 2);
      const what = EXIF_TAGS.get(tag);
      if (what !== undefined) traces.push({ what, at: entry });
      const list = start + read(entry + 8, 4);
      if (tag === EXIF_MORE && list > at) readList(list);
      // A camera that knows no place may still write the list's version.
      if (tag === EXIF_PLACE && list > at && list < end && read(list, 2) > 1) {
        traces.push({ what: 'a place on the Earth', at: entry });
      }
    }
  };
  readList(start + read(start + 4, 4));
  return traces;
}
