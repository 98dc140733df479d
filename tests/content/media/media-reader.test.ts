import { describe, expect, it } from 'vitest';
import { createMediaReader } from '../../../src/content/media/media-reader.ts';
import { MOST_PICTURE_BYTES } from '../../../src/content/media/parse-picture.ts';
import { MOST_NAME_BYTES, MOST_RUN_BYTES } from '../../../src/content/media/parse-sound.ts';
import { parseYamlFile } from '../../../src/content/yaml-document.ts';
import { joinBytes, makeAssets, makeJpeg, makeMp3, makePng, makeSvg, makeWav } from './sample-files.ts';

const document = parseYamlFile({ path: 'gestures/demo.yaml', text: 'a: 1\nb: 2\n' });

describe('a reader of media', () => {
  it('gives what a file holds, under a name that tells nothing of it', () => {
    const bytes = makePng(300, 200);
    const media = createMediaReader(document, makeAssets({ images: { 'the-full-moon.jpg': bytes } }));
    expect([...media.checkPicture(['a'], 'the-full-moon.jpg')]).toEqual([]);
    const picture = media.requirePicture('the-full-moon.jpg');
    expect(picture).toEqual({
      file: 'the-full-moon.jpg',
      packName: expect.stringMatching(/^picture-[0-9a-f]{16}\.png$/),
      widthPx: 300,
      heightPx: 200,
      bytes,
    });
  });

  it('gives the same name to the same bytes, and another to others', () => {
    const sounds = { 'a.mp3': makeMp3(3), 'b.wav': makeMp3(3), 'c.mp3': makeMp3(4) };
    const media = createMediaReader(document, makeAssets({ sounds }));
    const [a, b, c] = ['a.mp3', 'b.wav', 'c.mp3'].map((file) => {
      expect([...media.checkSound(['a'], file, MOST_NAME_BYTES)]).toEqual([]);
      return media.requireSound(file).packName;
    });
    expect(a).toMatch(/^recording-[0-9a-f]{16}\.mp3$/);
    expect(b).toBe(a);
    expect(c).not.toBe(a);
  });

  it('reads a file once, and no other', () => {
    const assets = makeAssets({ images: { 'a.svg': makeSvg(), 'b.svg': makeSvg() } });
    const media = createMediaReader(document, assets);
    for (const path of ['a', 'b']) expect([...media.checkPicture([path], 'a.svg')]).toEqual([]);
    expect(assets.filesRead).toEqual(['a.svg']);
  });

  it('tells of a faulty file wherever it is named, with the place in it', () => {
    const assets = makeAssets({ images: { 'a.svg': makeSvg('\n<script/>') } });
    const media = createMediaReader(document, assets);
    for (const [index, path] of ['a', 'b'].entries()) {
      expect([...media.checkPicture([path], 'a.svg')]).toMatchObject([
        {
          rule: 'media-file',
          severity: 'error',
          place: { file: 'gestures/demo.yaml', line: index + 1, column: 4 },
          related: { file: 'content/images/a.svg', line: 2, column: 1 },
        },
      ]);
    }
    expect(() => media.requirePicture('a.svg')).toThrow('a.svg was not read, or not found good.');
  });

  it('warns of what should change, and gives the picture', () => {
    const media = createMediaReader(document, makeAssets({ images: { 'a.jpg': makeJpeg(100, 90) } }));
    expect([...media.checkPicture(['a'], 'a.jpg')]).toMatchObject([
      {
        severity: 'warning',
        message:
          '`a`: `a.jpg` is 100 by 90 pixels large, expected 200 pixels or more along its longer side; it will be blurred in print: save it larger, or as SVG.',
      },
    ]);
    expect(media.requirePicture('a.jpg').widthPx).toBe(100);
  });

  it('limits the bytes of a picture', () => {
    const fill = (length: number) => joinBytes(makeJpeg(300, 200), new Uint8Array(length - makeJpeg(300, 200).length));
    const images = { 'most.jpg': fill(MOST_PICTURE_BYTES), 'more.jpg': fill(MOST_PICTURE_BYTES + 1) };
    const media = createMediaReader(document, makeAssets({ images }));
    expect([...media.checkPicture(['a'], 'most.jpg')]).toEqual([]);
    expect([...media.checkPicture(['a'], 'more.jpg')].map(({ message }) => message)).toEqual([
      '`a`: `more.jpg` is 301 kB large, expected at most 300 kB; save a smaller picture.',
    ]);
  });

  it('limits the bytes of a name and of a run', () => {
    const head = makeWav(0).length;
    const sounds = {
      'name.wav': makeWav(MOST_NAME_BYTES - head),
      'longer.wav': makeWav(MOST_NAME_BYTES - head + 2),
      'run.wav': makeWav(MOST_RUN_BYTES - head),
      'longest.wav': makeWav(MOST_RUN_BYTES - head + 2),
    };
    const media = createMediaReader(document, makeAssets({ sounds }));
    const tell = (file: string, most: number) => [...media.checkSound(['a'], file, most)].map(({ message }) => message);
    expect(tell('name.wav', MOST_NAME_BYTES)).toEqual([]);
    expect(tell('longer.wav', MOST_NAME_BYTES)).toEqual([
      '`a`: `longer.wav` is 301 kB large, expected at most 300 kB; save a shorter or smaller recording.',
    ]);
    expect(tell('run.wav', MOST_RUN_BYTES)).toEqual([]);
    expect(tell('longest.wav', MOST_RUN_BYTES)).toEqual([
      '`a`: `longest.wav` is 5.1 MB large, expected at most 5 MB; save a shorter or smaller recording.',
    ]);
    // One file may be too large for a name and good for a run.
    expect(tell('run.wav', MOST_NAME_BYTES)).toHaveLength(1);
  });

  it('finds a file whatever the encoding of its letters', () => {
    const decomposed = 'e\u0301toile.svg';
    const media = createMediaReader(document, makeAssets({ images: { [decomposed]: makeSvg() } }));
    expect([...media.checkPicture(['a'], '\u00e9toile.svg')]).toEqual([]);
    expect(media.requirePicture('\u00e9toile.svg').file).toBe(decomposed);
  });
});
