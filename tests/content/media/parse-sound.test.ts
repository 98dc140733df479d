import { describe, expect, it } from 'vitest';
import { parseSound } from '../../../src/content/media/parse-sound.ts';
import { bigEndian, joinBytes, makeBox, makeId3, makeM4a, makeMp3, makeOgg, makeWav } from './sample-files.ts';

const findFault = (bytes: Uint8Array) => parseSound(bytes).fault?.found;
const CUT = 'breaks off before its end, or holds no sound';

describe('parseSound', () => {
  it.each([
    ['WAV', makeWav(), '.wav', 'audio/wav'],
    ['WAV with floating-point numbers', makeWav(8, 3), '.wav', 'audio/wav'],
    ['MP3', makeMp3(), '.mp3', 'audio/mpeg'],
    ['MP3 with a tag', makeMp3(3, makeId3(300)), '.mp3', 'audio/mpeg'],
    ['MP3 with a tag and zeros', makeMp3(3, joinBytes(makeId3(5), new Uint8Array(7))), '.mp3', 'audio/mpeg'],
    ['Opus', makeOgg(), '.ogg', 'audio/ogg'],
    ['Vorbis', makeOgg('\u0001vorbis'), '.ogg', 'audio/ogg'],
    ['M4A', makeM4a(), '.m4a', 'audio/mp4'],
    ['MP4 with sound alone', makeM4a(['soun'], 'mp4a', 'isom'), '.m4a', 'audio/mp4'],
  ])('knows %s by its bytes', (_, bytes, ending, mediaType) => {
    expect(parseSound(bytes)).toMatchObject({ value: { ending, mediaType } });
  });

  it.each([
    ['holds a packed WAV sound', makeWav(8, 2)],
    ['holds an Ogg file without Opus or Vorbis sound', makeOgg('\u007fFLAC')],
    ['holds an MPEG-4 sound without AAC', makeM4a(['soun'], 'alac')],
    ['holds a film', makeM4a(['soun', 'vide'])],
    ['holds a QuickTime film', makeM4a(['soun'], 'mp4a', 'qt  ')],
    ['holds a 3GP film or sound', makeM4a(['soun'], 'samr', '3gp4')],
    ['holds a HEIC picture', makeM4a([], '', 'heic')],
    ['holds a FLAC sound', joinBytes('fLaC')],
    ['holds an AMR sound', joinBytes('#!AMR\n')],
    ['holds an AIFF sound', joinBytes('FORM', bigEndian(9), 'AIFFCOMM')],
    ['holds an AAC sound without a container', joinBytes([0xff, 0xf1, 0x50, 0x80], new Uint8Array(40))],
    ['holds a WebM or Matroska film', joinBytes([0x1a, 0x45, 0xdf, 0xa3])],
    ['holds a MIDI file', joinBytes('MThd')],
    ['holds nothing', new Uint8Array()],
  ])('says that a file %s', (found, bytes) => {
    expect(findFault(bytes)).toBe(found);
  });

  it.each([
    ['WAV', makeWav(), 12],
    ['MP3', makeMp3(3), 4],
    ['MP3 with a tag', makeMp3(3, makeId3(50)), 3],
    ['Opus', makeOgg(), 40],
    ['M4A', makeM4a(), 12],
  ])('finds %s that breaks off', (_, bytes, from) => {
    for (let length = from; length < bytes.length; length += 1) {
      expect(findFault(bytes.subarray(0, length)), `${length} bytes`).toBe(CUT);
    }
  });

  it('reads boxes whose size stands in eight bytes, or is all the rest', () => {
    const long = joinBytes(bigEndian(1), 'mdat', bigEndian(19, 8), [1, 2, 3]);
    const rest = joinBytes(bigEndian(0), 'mdat', [1, 2, 3]);
    const before = makeM4a().subarray(0, -11);
    expect(findFault(joinBytes(before, long))).toBeUndefined();
    expect(findFault(joinBytes(before, rest))).toBeUndefined();
    expect(findFault(joinBytes(before, bigEndian(4), 'mdat', [1, 2, 3, 4]))).toBe(CUT);
    expect(findFault(joinBytes(before, makeBox('free')))).toBe(CUT);
  });
});
