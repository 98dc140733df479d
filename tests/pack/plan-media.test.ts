import { describe, expect, it } from 'vitest';
import type { ContentPicture, ContentSound } from '../../src/content/types.ts';
import { planMediaFiles } from '../../src/pack/plan-media.ts';
import type { Track } from '../../src/rhythm/timeline-types.ts';
import { buildWeek, listTexts, makeWeek, openContent, writeLesson } from '../directives/build-week.ts';
import { buildFakeWeek } from './fake-week.ts';

const track = (name: string, beats: number): Track => ({
  name,
  strokes: Array.from({ length: beats }, () => 'drum' as const),
  tempi: [{ atBeat: 0, beatsPerMinute: 60 }],
  markers: [{ atBeat: 0, text: 'Eau noire' }],
  totalSeconds: beats,
});
const picture: ContentPicture = {
  file: 'a.png',
  packName: 'p-1.png',
  widthPx: 1,
  heightPx: 1,
  bytes: Uint8Array.of(1),
};
const sound: ContentSound = { file: 'a.mp3', packName: 's-1.mp3', mediaType: 'audio/mpeg', bytes: Uint8Array.of(2) };
const NOTHING = { tracks: [], sounds: [], pictures: [] };

const plan = (media: Parameters<typeof buildFakeWeek>[0]) => planMediaFiles(buildFakeWeek(media), new Map());
const listPaths = (files: readonly { readonly path: string }[]) => files.map(({ path }) => path);

describe('planMediaFiles', () => {
  it('gives each reader its own, in order, and MIDI files to the teacher alone', () => {
    const files = plan({
      media: {
        teacher: { tracks: [track('beat-60-1', 2)], sounds: [sound], pictures: [picture] },
        learners: { tracks: [track('beat-60-1', 1)], sounds: [], pictures: [picture] },
      },
    });
    expect(listPaths(files)).toEqual([
      'images/p-1.png',
      'learners/images/p-1.png',
      'learners/sound/beat-60-1.wav',
      'sound/beat-60-1.mid',
      'sound/beat-60-1.wav',
      'sound/s-1.mp3',
    ]);
    expect(files.find(({ path }) => path === 'images/p-1.png')?.content).toBe(picture.bytes);
  });

  it('synthesises what sounds the same once, whatever it is called', () => {
    const files = plan({
      media: {
        teacher: { ...NOTHING, tracks: [track('beat-60-1', 3), track('beat-60-2', 2)] },
        learners: { ...NOTHING, tracks: [track('beat-60-1', 2)] },
      },
    });
    const contentOf = (path: string) => files.find((file) => file.path === path)?.content;
    expect(contentOf('learners/sound/beat-60-1.wav')).toBe(contentOf('sound/beat-60-2.wav'));
    expect(contentOf('sound/beat-60-1.wav')?.length).toBe(44 + 3 * 14_400);
  });

  it('plans nothing for a week without runs, and refuses two files of one name', () => {
    expect(plan({})).toEqual([]);
    const other = { ...picture, bytes: Uint8Array.of(3) };
    const media = { teacher: { ...NOTHING, pictures: [picture, other] } };
    expect(() => plan({ media })).toThrow('images/p-1.png');
  });
});

describe('the sound of a pack', () => {
  const lesson = [
    '::gesture-sequence{nights=up-to-tonight}',
    '::gesture-sequence{nights="Dark Water"}',
    ':::handout[One]\n::gesture-sequence{nights="Dark Water"}\n:::',
    ':::handout[Two]\nNo run.\n:::',
  ];
  const { plan: pack } = buildWeek(makeWeek({ 'a.md': writeLesson(lesson.join('\n\n')) }), openContent());
  const files = pack?.files ?? [];
  const texts = pack === undefined ? new Map<string, string>() : listTexts(pack);
  const sizeOf = (path: string) => files.find((file) => file.path === path)?.content.length ?? 0;

  it('is one track for runs that are part of one another', () => {
    const sounds = listPaths(files).filter((path) => path.startsWith('sound/'));
    expect(sounds).toEqual(['sound/beat-60-1.mid', 'sound/beat-60-1.wav']);
    expect(texts.get('3-wednesday.html')?.match(/src="sound\/[^"]*"/g)).toEqual([
      'src="sound/beat-60-1.wav"',
      'src="sound/beat-60-1.wav#t=0,3.7"',
    ]);
  });

  it('tells learners nothing of the teacher’s runs: their track is as long as their own run', () => {
    expect(listPaths(files).filter((path) => path.startsWith('learners/sound/'))).toEqual([
      'learners/sound/beat-60-1.wav',
    ]);
    expect(sizeOf('learners/sound/beat-60-1.wav')).toBe(44 + 4 * 14_400);
    expect(sizeOf('sound/beat-60-1.wav')).toBeGreaterThan(sizeOf('learners/sound/beat-60-1.wav'));
  });

  it('is let in by the pages that have a run, and a script with it; by no other', () => {
    const plays = [...texts].flatMap(([path, html]) => (html.includes('media-src') ? [path] : []));
    expect(plays).toEqual(['3-wednesday.html', 'learners/3-wednesday-1-one.html']);
    const scripted = [...texts].flatMap(([path, html]) => (html.includes('player-template') ? [path] : []));
    expect(scripted).toEqual(expect.arrayContaining(plays));
  });
});
