import { hasBytes } from './bytes.ts';

/** First bytes of kinds of file that teachers meet, and where they stand: from memory, common practice. */
const SIGNS: readonly (readonly [
  name: string,
  ...signs: readonly (readonly [number, string | readonly number[]])[],
])[] = [
  ['a PNG picture', [0, [0x89, 0x50, 0x4e, 0x47]]],
  ['a JPEG picture', [0, [0xff, 0xd8, 0xff]]],
  ['a GIF picture', [0, 'GIF8']],
  ['a WebP picture', [0, 'RIFF'], [8, 'WEBP']],
  ['a WAV sound', [0, 'RIFF'], [8, 'WAVE']],
  ['a BMP picture', [0, 'BM']],
  ['a TIFF picture', [0, 'II*\0']],
  ['a TIFF picture', [0, 'MM\0*']],
  ['a PDF document', [0, '%PDF']],
  ['a ZIP archive', [0, 'PK\u0003\u0004']],
  ['a packed SVG picture', [0, [0x1f, 0x8b]]],
  ['a HEIC picture', [4, 'ftyphei']],
  ['a HEIC picture', [4, 'ftypmif1']],
  ['an AVIF picture', [4, 'ftypavif']],
  ['a 3GP film or sound', [4, 'ftyp3g']],
  ['a QuickTime film', [4, 'ftypqt']],
  ['an MPEG-4 film or sound', [4, 'ftyp']],
  ['an Ogg sound', [0, 'OggS']],
  ['a FLAC sound', [0, 'fLaC']],
  ['an AMR sound', [0, '#!AMR']],
  ['an AIFF sound', [0, 'FORM'], [8, 'AIF']],
  ['a CAF sound', [0, 'caff']],
  ['a MIDI file', [0, 'MThd']],
  ['a Windows Media file', [0, [0x30, 0x26, 0xb2, 0x75]]],
  ['a WebM or Matroska film', [0, [0x1a, 0x45, 0xdf, 0xa3]]],
  ['an MP3 sound', [0, 'ID3']],
  ['an AAC sound without a container', [0, [0xff, 0xf1]]],
  ['an AAC sound without a container', [0, [0xff, 0xf9]]],
];

/** What a file is by its first bytes, for a message: "a GIF picture", "nothing", "no kind that is known here". */
export function nameFileType(bytes: Uint8Array): string {
  if (bytes.length === 0) return 'nothing';
  const known = SIGNS.find(([, ...signs]) => signs.every(([offset, wanted]) => hasBytes(bytes, offset, wanted)));
  if (known !== undefined) return known[0];
  return findText(bytes)?.includes('<svg') ? 'an SVG picture' : 'no kind of file that is known here';
}

/** The beginning as text; nothing when it is none. */
function findText(bytes: Uint8Array): string | undefined {
  const text = new TextDecoder().decode(bytes.subarray(0, 20_000));
  return text.includes('\0') ? undefined : text;
}
