import { describe, expect, it } from 'vitest';
import { parsePicture } from '../../../src/content/media/parse-picture.ts';
import { joinBytes, makeExif, makeJpeg, makePng, makeSegment, makeSvg } from './sample-files.ts';

const findFault = (bytes: Uint8Array) => parsePicture(bytes).fault?.found;
const listRemarks = (bytes: Uint8Array) => parsePicture(bytes).value?.remarks.map(({ found }) => found);

describe('parsePicture', () => {
  it('tells the kind by the bytes, and measures', () => {
    expect(parsePicture(makePng(300, 200)).value).toEqual({ widthPx: 300, heightPx: 200, ending: '.png', remarks: [] });
    expect(parsePicture(makeJpeg(300, 200)).value).toEqual({
      widthPx: 300,
      heightPx: 200,
      ending: '.jpg',
      remarks: [],
    });
    expect(parsePicture(makeSvg()).value).toEqual({ widthPx: 40, heightPx: 30, ending: '.svg', remarks: [] });
  });

  it.each([0xc0, 0xc1, 0xc2])('measures a JPEG of kind %i', (frame) => {
    expect(parsePicture(makeJpeg(640, 480, [], frame)).value).toMatchObject({ widthPx: 640, heightPx: 480 });
  });

  it('does not take a table of a JPEG for its frame', () => {
    const table = makeSegment(0xc4, new Uint8Array(20).fill(7));
    expect(parsePicture(makeJpeg(640, 480, [table])).value).toMatchObject({ widthPx: 640, heightPx: 480 });
  });

  it.each([
    ['a GIF picture', joinBytes('GIF89a', new Uint8Array(20))],
    ['a WebP picture', joinBytes('RIFF', [9, 9, 9, 9], 'WEBPVP8 ')],
    ['a HEIC picture', joinBytes([0, 0, 0, 24], 'ftypheic', new Uint8Array(12))],
    ['a PDF document', joinBytes('%PDF-1.4')],
    ['nothing', new Uint8Array()],
    ['no kind of file that is known here', joinBytes('some text')],
  ])('says that a file holds %s', (kind, bytes) => {
    expect(findFault(bytes)).toBe(`holds ${kind}`);
  });

  it('finds pictures that break off', () => {
    const png = makePng(300, 200);
    const jpeg = makeJpeg(300, 200);
    for (let length = 12; length < png.length; length += 1) {
      expect(findFault(png.subarray(0, length)), `${length} bytes of PNG`).toBe('breaks off before its end');
    }
    for (let length = 4; length < jpeg.length; length += 1) {
      expect(findFault(jpeg.subarray(0, length)), `${length} bytes of JPEG`).toBe('breaks off before its end');
    }
  });

  it('lets telephones put more behind a JPEG, and programs put more into a PNG', () => {
    expect(findFault(joinBytes(makeJpeg(300, 200), 'more'))).toBeUndefined();
    expect(findFault(makePng(300, 200, 'tEXt', 'pHYs'))).toBeUndefined();
  });

  it('refuses a PNG that moves', () => {
    expect(findFault(makePng(300, 200, 'acTL'))).toBe('holds a picture that moves');
  });

  it('limits the sides', () => {
    expect(findFault(makePng(2000, 2000))).toBeUndefined();
    expect(findFault(makePng(2001, 10))).toBe('is 2001 by 10 pixels large');
    expect(findFault(makeJpeg(10, 2001))).toBe('is 10 by 2001 pixels large');
    expect(findFault(makePng(0, 200))).toBe('is 0 by 200 pixels large');
  });

  it('remarks on few pixels', () => {
    expect(listRemarks(makePng(199, 199))).toEqual(['is 199 by 199 pixels large']);
    expect(listRemarks(makePng(200, 50))).toEqual([]);
  });

  it.each([false, true])('reads the notes of a camera: low byte first %s', (isLittle) => {
    const turned = makeJpeg(400, 300, [makeExif({ 274: 6 }, isLittle)]);
    expect(parsePicture(turned).value).toMatchObject({ widthPx: 300, heightPx: 400, remarks: [] });
    const flipped = makeJpeg(400, 300, [makeExif({ 274: 3 }, isLittle)]);
    expect(parsePicture(flipped).value).toMatchObject({ widthPx: 400, heightPx: 300, remarks: [] });
    expect(listRemarks(makeJpeg(400, 300, [makeExif({ 271: 1, 34853: 1 }, isLittle)]))).toEqual([
      'tells where it was taken',
    ]);
  });

  it('passes over notes that are cut or odd', () => {
    const exif = makeExif({ 274: 6 });
    for (let length = 4; length < exif.length; length += 1) {
      const cut = makeSegment(0xe1, exif.subarray(4, length));
      expect(findFault(makeJpeg(400, 300, [cut])), `${length} bytes`).toBeUndefined();
    }
  });
});
