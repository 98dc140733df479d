import { deflateRawSync, deflateSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import {
  bigEndian,
  joinBytes,
  littleEndian,
  makeBox,
  makeJpeg,
  makeM4a,
  makeMp3,
  makeOgg,
  makePng,
  makeSegment,
  makeSvg,
  makeWav,
} from '../../content/media/sample-files.ts';
import { openContent } from '../../directives/build-week.ts';
import { openLeakLesson, pathOf } from './leak-week.ts';

const LESSON = `:::group-quiz[Moon quiz]{groups=2 seed=files}
1. What follows Round Moon?

   ::answer[Butter Moon]{accept="the yellow moon of harvest" working="Butter Moon stands next to it on the wall."}

2. Which side of this Moon is lit?

   ![A Moon lit on one half](on-paper.png)

   - [x] the side of the sea
   - [ ] the side of the hill
:::

:::handout[Sky slip]
![The first Moon](on-handout.png)
![The first Moon, drawn](drawn.svg)
:::
`;
const opened = openLeakLesson(LESSON, openContent(), ['drawn.svg', 'on-handout.png', 'on-paper.png']);
const SENTENCE = 'Butter Moon stands next to it on the wall.';
const WORKING = 'The working of question 1 of `Moon quiz` in `lessons/test-week/input.md`';

/** Findings about one file among those of the week. */
function search(path: string, content: Uint8Array | string, origin: 'planned' | 'built' = 'planned') {
  return opened.find([...opened.files, { path, content }], origin);
}

const chunk = (type: string, ...content: (string | Uint8Array | readonly number[])[]) => {
  const data = joinBytes(...content);
  // A checksum of letters, which must not become part of the text before it.
  return joinBytes(bigEndian(data.length), type, data, 'abcd');
};
const makePngWith = (part: Uint8Array) => {
  const png = makePng(4, 4);
  return joinBytes(png.subarray(0, 33), part, png.subarray(33));
};
const wide = (text: string, isBig = false) =>
  joinBytes(...[...text].map((letter) => (isBig ? `\0${letter}` : `${letter}\0`)));
const riff = (kind: string, ...parts: Uint8Array[]) => {
  const body = joinBytes(kind, ...parts);
  return joinBytes('RIFF', littleEndian(body.length), body);
};
const part = (type: string, content: Uint8Array | string) => {
  const data = joinBytes(content);
  return joinBytes(type, littleEndian(data.length), data, data.length % 2 === 0 ? [] : [0]);
};
const makeGif = (text: string) => {
  const blocks = text.match(/.{1,40}/gs) ?? [];
  const comment = joinBytes([0x21, 0xfe], ...blocks.map((block) => joinBytes(block.length, block)), 0);
  return joinBytes('GIF89a', [4, 0, 4, 0, 0x80, 0, 0], [0, 0, 0, 255, 255, 255], comment, 0x3b);
};
const makeZip = (name: string, text: string, comments: { readonly entry?: string; readonly archive?: string } = {}) => {
  const packed = deflateRawSync(text);
  const head = joinBytes(
    [20, 0, 0, 0, 8, 0],
    new Uint8Array(8),
    littleEndian(packed.length),
    littleEndian(text.length),
    littleEndian(name.length, 2),
  );
  const local = joinBytes('PK\u0003\u0004', head, littleEndian(0, 2), name, packed);
  const { entry = '', archive = '' } = comments;
  const central = joinBytes(
    'PK\u0001\u0002',
    [20, 0],
    head,
    littleEndian(0, 2),
    littleEndian(entry.length, 2),
    new Uint8Array(8),
    littleEndian(0),
    name,
    entry,
  );
  const end = joinBytes(
    'PK\u0005\u0006',
    new Uint8Array(4),
    littleEndian(1, 2),
    littleEndian(1, 2),
    littleEndian(central.length),
    littleEndian(local.length),
    littleEndian(archive.length, 2),
    archive,
  );
  return joinBytes(local, central, end);
};
const frame = (id: string, text: string) => joinBytes(id, bigEndian(text.length + 1), [0, 0], 3, text);
const makeTagged = (...frames: Uint8Array[]) => {
  const body = joinBytes(...frames);
  return makeMp3(
    4,
    joinBytes(
      'ID3',
      [3, 0, 0],
      [21, 14, 7, 0].map((bits) => (body.length >> bits) & 0x7f),
      body,
    ),
  );
};

describe('a sentence of the key is found in', () => {
  it.each([
    ['a PNG text', 'a.png', makePngWith(chunk('tEXt', 'Comment\0', SENTENCE)), 'in its PNG text chunk Comment'],
    [
      'a packed PNG text',
      'a.png',
      makePngWith(chunk('zTXt', 'Comment\0\0', deflateSync(SENTENCE))),
      'in its PNG text chunk Comment',
    ],
    [
      'an international PNG text',
      'a.png',
      makePngWith(chunk('iTXt', 'Comment\0\0\0en\0\0', SENTENCE)),
      'in its PNG text chunk Comment',
    ],
    [
      'a packed international PNG text',
      'a.png',
      makePngWith(chunk('iTXt', 'Comment\0', [1, 0], 'en\0\0', deflateSync(SENTENCE))),
      'in its PNG text chunk Comment',
    ],
    ['the Exif data of a PNG', 'a.png', makePngWith(chunk('eXIf', 'MM\0*', SENTENCE)), 'in its PNG chunk eXIf'],
    ['a PNG chunk of no standard', 'a.png', makePngWith(chunk('quIz', SENTENCE)), 'in its PNG chunk quIz'],
    ['bytes behind a PNG', 'a.png', joinBytes(makePng(4, 4), SENTENCE), 'in its bytes behind the end of the picture'],
    [
      'a PNG text in base64',
      'a.png',
      makePngWith(chunk('tEXt', 'Comment\0', btoa(SENTENCE))),
      'in its PNG text chunk Comment, coded (base64)',
    ],
    ['a JPEG comment', 'a.jpg', makeJpeg(4, 4, [makeSegment(0xfe, joinBytes(SENTENCE))]), 'in its JPEG comment'],
    [
      'Exif data in UTF-16',
      'a.jpg',
      makeJpeg(4, 4, [makeSegment(0xe1, joinBytes('Exif\0\0II*\0', [8, 0, 0, 0, 0, 0], wide(SENTENCE)))]),
      'in its Exif data',
    ],
    [
      'Exif data in UTF-16, the high byte first',
      'a.jpg',
      makeJpeg(4, 4, [makeSegment(0xe1, joinBytes('Exif\0\0II*\0', [8, 0, 0, 0, 0, 0], wide(SENTENCE, true)))]),
      'in its Exif data',
    ],
    [
      'XMP data',
      'a.jpg',
      makeJpeg(4, 4, [makeSegment(0xe1, joinBytes('http://ns.adobe.com/xap/1.0/\0', `<rdf:li>${SENTENCE}</rdf:li>`))]),
      'in its XMP data',
    ],
    [
      'IPTC data',
      'a.jpg',
      makeJpeg(4, 4, [makeSegment(0xed, joinBytes('Photoshop 3.0\0', SENTENCE))]),
      'in its IPTC data',
    ],
    [
      'another JPEG segment',
      'a.jpg',
      makeJpeg(4, 4, [makeSegment(0xec, joinBytes(SENTENCE))]),
      'in its JPEG segment APP12',
    ],
    ['bytes behind a JPEG', 'a.jpg', joinBytes(makeJpeg(4, 4), SENTENCE), 'in its bytes behind the end of the picture'],
    ['a GIF comment in blocks', 'a.gif', makeGif(SENTENCE), 'in its GIF comment'],
    ['the Exif data of a WebP', 'a.webp', riff('WEBP', part('EXIF', `II*\0${SENTENCE}`)), 'in its chunk EXIF'],
    ['the XMP data of a WebP', 'a.webp', riff('WEBP', part('XMP ', SENTENCE)), 'in its chunk XMP'],
    [
      'a list of a WAV',
      'a.wav',
      riff('WAVE', part('LIST', joinBytes('INFO', part('INAM', SENTENCE.slice(0, -1)), part('IART', 'x'.repeat(8))))),
      'in its chunk INAM',
    ],
    ['a WAV chunk of no standard', 'a.wav', joinBytes(riff('WAVE', part('quiz', SENTENCE))), 'in its chunk quiz'],
    [
      'the sound of a WAV',
      'a.wav',
      riff('WAVE', part('data', joinBytes(new Uint8Array(99), SENTENCE, new Uint8Array(99)))),
      'in its bytes',
    ],
    [
      'the tag of an MP3',
      'a.mp3',
      makeTagged(frame('TIT2', SENTENCE.slice(0, -1)), frame('TPE1', 'Somebody')),
      'in its ID3 frame TIT2',
    ],
    ['an Ogg file', 'a.ogg', joinBytes(makeOgg(), 'OpusTags', littleEndian(50), SENTENCE), 'in its bytes'],
    [
      'an MPEG-4 file',
      'a.m4a',
      joinBytes(makeM4a(), makeBox('udta', makeBox('titl', [0, 0, 0, 0], SENTENCE, [0]))),
      'in its bytes',
    ],
    ['an archive’s comment', 'a.zip', makeZip('a.txt', 'nothing', { archive: SENTENCE }), 'in its archive comment'],
    [
      'a comment on a file in an archive',
      'a.zip',
      makeZip('a.txt', 'nothing', { entry: SENTENCE }),
      'in its comment on a.txt in the archive',
    ],
    ['a file in an archive', 'a.zip', makeZip('a.txt', SENTENCE), 'in its file a.txt in the archive'],
    ['a text', 'a.txt', SENTENCE, 'in its bytes'],
    ['a file of any kind', 'a', joinBytes([0, 1, 2], SENTENCE, 0), 'in its bytes'],
  ])('%s', (_what, name, content, told) => {
    expect(search(`learners/images/${name}`, content).map(({ severity, message }) => [severity, message])).toEqual([
      ['error', expect.stringContaining(`${WORKING} stands ${told}: \`${SENTENCE}\``)],
    ]);
  });

  it.each([
    ['the title of a drawing', `<title>${SENTENCE}</title>`, 'in the text'],
    ['the words of a drawing', '<text>Butter <tspan>Moon</tspan> stands next to it on the wall.</text>', 'in the text'],
    ['a comment', `<!-- ${SENTENCE} -->`, 'in a comment'],
    ['plain data', `<desc><![CDATA[${SENTENCE}]]></desc>`, 'in the text'],
    ['an attribute', `<g aria-label="${SENTENCE}"/>`, 'in the attribute `aria-label`'],
    ['a declaration', `<?quiz ${SENTENCE}?>`, 'in a instruction'],
    ['metadata in base64', `<metadata>${btoa(SENTENCE)}</metadata>`, 'in an element `<metadata>`, coded (base64)'],
  ])('%s in a drawing', (_what, inside, told) => {
    const message = `${WORKING} stands ${told}`;
    expect(search('learners/images/a.svg', makeSvg(inside)).map((each) => each.message)).toEqual([
      expect.stringContaining(message),
    ]);
  });
});

describe('an answer is found', () => {
  const png = makePngWith(chunk('tEXt', 'Title\0', 'Butter Moon'));

  it('in a picture on a paper, with the author’s own file', () => {
    expect(search('learners/images/on-paper.png', png)).toEqual([
      {
        rule: 'learner-leak',
        severity: 'error',
        place: { file: 'pack/learners/images/on-paper.png', line: 1, column: 48 },
        message:
          'The answer to question 1 of `Moon quiz` in `lessons/test-week/input.md` stands in its PNG text chunk Title: `Butter Moon`; expected none of it in a file for learners; save the file again without it',
        related: { file: 'lessons/test-week/on-paper.png', line: 1, column: 1 },
      },
    ]);
  });

  it('in a picture on a handout, where the name of a night may be meant well', () => {
    expect(search('learners/images/on-handout.png', png).map(({ severity }) => severity)).toEqual(['warning']);
    const told = makePngWith(chunk('tEXt', 'Title\0', 'It is the yellow moon of harvest'));
    expect(search('learners/images/on-handout.png', told).map(({ severity }) => severity)).toEqual(['error']);
  });

  it('in a file that nobody planned, and in its name', () => {
    expect(search('learners/images/other.png', png, 'built').map(({ severity }) => severity)).toEqual(['error']);
    expect(search('learners/images/buttermoon.png', makePng(4, 4), 'built')).toHaveLength(1);
    expect(search('learners/sound/Butter Moon.wav', makeWav(), 'built')).toHaveLength(1);
  });

  it('in the title of a drawing, but not in the words drawn on a handout', () => {
    expect(search('learners/images/drawn.svg', makeSvg('<text>Butter Moon</text>'))).toEqual([]);
    expect(search('learners/images/drawn.svg', makeSvg('<title>Butter Moon</title>'))).toHaveLength(1);
  });
});

describe('what a file tells of people and places is a warning', () => {
  const exif = (...entries: Uint8Array[]) =>
    makeSegment(
      0xe1,
      joinBytes(
        'Exif\0\0',
        'II*\0',
        littleEndian(8),
        littleEndian(entries.length, 2),
        ...entries,
        littleEndian(0),
        littleEndian(2, 2),
        new Uint8Array(24),
      ),
    );
  const entry = (tag: number, value: number) =>
    joinBytes(littleEndian(tag, 2), littleEndian(4, 2), littleEndian(1), littleEndian(value));

  it.each([
    ['a position', 'a.jpg', makeJpeg(4, 4, [exif(entry(0x8825, 8 + 2 + 12 + 4))]), 'a place on the Earth'],
    ['an artist', 'a.jpg', makeJpeg(4, 4, [exif(entry(0x013b, 0))]), 'a person’s name'],
    [
      'an author of XMP',
      'a.jpg',
      makeJpeg(4, 4, [
        makeSegment(
          0xe1,
          joinBytes(
            'http://ns.adobe.com/xap/1.0/\0',
            '<dc:creator><rdf:Seq><rdf:li>A. B.</rdf:li></rdf:Seq></dc:creator>',
          ),
        ),
      ]),
      'a person’s name',
    ],
    [
      'a by-line',
      'a.jpg',
      makeJpeg(4, 4, [makeSegment(0xed, joinBytes('Photoshop 3.0\0', [0x1c, 2, 80, 0, 4], 'A. B'))]),
      'a person’s name',
    ],
    ['an author of PNG', 'a.png', makePngWith(chunk('tEXt', 'Author\0', 'A. B.')), 'a person’s name'],
    [
      'a creator of SVG',
      'a.svg',
      makeSvg('<metadata><dc:creator><cc:Agent><dc:title>A. B.</dc:title></cc:Agent></dc:creator></metadata>'),
      'a person’s name',
    ],
    [
      'where a recording was made',
      'a.m4a',
      joinBytes(makeM4a(), makeBox('\u00a9xyz', '+01.0+002.0/')),
      'a place on the Earth',
    ],
    [
      'the number of a camera',
      'a.jpg',
      makeJpeg(4, 4, [makeSegment(0xe1, joinBytes('http://ns.adobe.com/xap/1.0/\0', 'aux:SerialNumber="12"'))]),
      'the number of a device',
    ],
  ])('%s', (_what, name, content, told) => {
    const found = search(`learners/images/${name}`, content);
    expect(found.map(({ severity, message }) => [severity, message])).toEqual([
      ['warning', expect.stringContaining(`tells ${told}`)],
    ]);
  });

  it('and nothing is said of a camera that knows no place, nor of an empty author', () => {
    const empty = exif(entry(0x8825, 0xffff), entry(0x0112, 1));
    expect(search('learners/images/a.jpg', makeJpeg(4, 4, [empty]))).toEqual([]);
    expect(
      search(
        'learners/images/a.svg',
        makeSvg('<metadata><dc:creator><cc:Agent><dc:title></dc:title></cc:Agent></dc:creator></metadata>'),
      ),
    ).toEqual([]);
  });
});

it('finds nothing in files that hold nothing, nor fails at faulty ones', () => {
  const samples = [
    makePng(4, 4),
    makeJpeg(4, 4),
    makeGif(''),
    makeWav(),
    makeMp3(),
    makeOgg(),
    makeM4a(),
    makeZip('a.txt', 'nothing'),
    makeSvg(),
  ];
  for (const sample of samples) {
    expect(search('learners/images/a.bin', sample)).toEqual([]);
    for (let length = 0; length < sample.length; length += 3) {
      expect(search('learners/images/a.bin', sample.subarray(0, length))).toEqual([]);
    }
  }
  const broken = makePngWith(chunk('zTXt', 'Comment\0\0', 'not packed at all'));
  expect(search('learners/images/a.png', broken)).toEqual([]);
});

it('passes over the teacher’s files', () => {
  expect(search('images/a.txt', SENTENCE)).toEqual([]);
  expect(search(pathOf(opened, 'quiz').replace('learners/', ''), `<p>${SENTENCE}</p>`)).toEqual([]);
});
