import type { ContentPicture } from '../content/types.ts';
import { LEARNERS_FOLDER } from '../directives/page-names.ts';
import type { ReaderMedia, ResolvedWeek, UsedPicture } from '../lesson/model.ts';
import { renderMidi } from '../rhythm/render-midi.ts';
import { renderWav } from '../rhythm/render-wav.ts';
import type { Track } from '../rhythm/timeline-types.ts';
import type { PackFile } from './pack-plan.ts';
import { listSheetMedia } from './pages/gesture-sheet.ts';
import { listScoreMonths } from './pages/score-months.ts';
import { listScorePictures } from './pages/score-sheet.ts';

/** Renders a track as a sound file. */
type Drummer = (track: Track) => Uint8Array;

/**
 * Pictures and sounds of a pack, in order of path. The teacher's folders hold what the teacher's pages show and play,
 * the learners' folders only what a page for learners does; MIDI files are the teacher's alone, since the names of
 * groups stand in them.
 * @param pictures Bytes of the week's own picture files, by path from its folder; every one that a lesson shows is there.
 */
export function planMediaFiles(week: ResolvedWeek, pictures: ReadonlyMap<string, Uint8Array>): PackFile[] {
  const files = new Map<string, Uint8Array>();
  const drum = createDrummer();
  for (const file of [
    ...listLessonPictures(listUsed(week), pictures),
    ...listMedia(week.media.teacher, '', drum),
    ...listPictures(listScorePictures(week, listScoreMonths(week)), ''),
    ...listMedia({ tracks: [], ...listSheetMedia(week) }, '', drum),
    ...week.media.teacher.tracks.map((track) => ({ path: `sound/${track.name}.mid`, content: renderMidi(track) })),
    ...listMedia(week.media.learners, `${LEARNERS_FOLDER}/`, drum),
  ]) {
    const other = files.get(file.path);
    if (other !== undefined && other !== file.content) throw new Error(`Two files of the pack would be ${file.path}.`);
    files.set(file.path, file.content);
  }
  return [...files].map(([path, content]) => ({ path, content })).sort((a, b) => (a.path < b.path ? -1 : 1));
}

/**
 * The pictures and recordings of the learners' part, the same as among all; without the drum tracks, which are made of
 * numbers alone and take the longest.
 */
export function planLearnersMedia(week: ResolvedWeek, pictures: ReadonlyMap<string, Uint8Array>): PackFile[] {
  const shown = listUsed(week).filter(({ forLearners }) => forLearners);
  const folder = `${LEARNERS_FOLDER}/`;
  const files = [
    ...listLessonPictures(shown, pictures).filter(({ path }) => path.startsWith(folder)),
    ...listMedia({ ...week.media.learners, tracks: [] }, folder, renderWav),
  ];
  return [...new Map(files.map((file) => [file.path, file])).values()];
}

interface MediaFile {
  readonly path: string;
  readonly content: Uint8Array;
}

/** The week's own pictures: every one for the teacher, for learners those that a page of theirs shows. */
function listLessonPictures(used: readonly UsedPicture[], pictures: ReadonlyMap<string, Uint8Array>): MediaFile[] {
  return used.flatMap(({ path, name, forLearners }) => {
    const content = pictures.get(path);
    if (content === undefined) throw new Error(`The picture ${path} was not read.`);
    const folders = forLearners ? ['', `${LEARNERS_FOLDER}/`] : [''];
    return folders.map((folder) => ({ path: `${folder}images/${name}`, content }));
  });
}

function listUsed({ lessons }: ResolvedWeek): UsedPicture[] {
  return lessons.flatMap(({ pictures }) => pictures);
}

function listMedia({ tracks, sounds, pictures }: ReaderMedia, folder: string, drum: Drummer): MediaFile[] {
  return [
    ...tracks.map((track) => ({ path: `${folder}sound/${track.name}.wav`, content: drum(track) })),
    ...sounds.map(({ packName, bytes }) => ({ path: `${folder}sound/${packName}`, content: bytes })),
    ...listPictures(pictures, folder),
  ];
}

function listPictures(pictures: readonly ContentPicture[], folder: string): MediaFile[] {
  return pictures.map(({ packName, bytes }) => ({ path: `${folder}images/${packName}`, content: bytes }));
}

/** Two tracks that sound the same are synthesised once. */
function createDrummer(): Drummer {
  const rendered = new Map<string, Uint8Array>();
  return (track) => {
    const key = JSON.stringify([track.strokes, track.tempi]);
    const bytes = rendered.get(key) ?? renderWav(track);
    rendered.set(key, bytes);
    return bytes;
  };
}
