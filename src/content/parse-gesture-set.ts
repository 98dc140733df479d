import { checkHands } from './check-hands.ts';
import { checkThen } from './check-then.ts';
import { type Checked, checkDocument } from './check-value.ts';
import type { Diagnostic } from './diagnostic.ts';
import { expandGestures } from './expand-gestures.ts';
import { collectTexts } from './faults.ts';
import { computeFileId } from './file-id.ts';
import { findGestureWord } from './gesture-words.ts';
import { completeThen } from './hand-poses.ts';
import { type ContentAssets, NO_ASSETS } from './media/content-assets.ts';
import { createMediaReader, type MediaReader } from './media/media-reader.ts';
import { MOST_RUN_BYTES } from './media/parse-sound.ts';
import { checkRecordings, convertRecording } from './recordings.ts';
import { gesturesSchema, type WrittenGesture, type WrittenGestures } from './schemas/gestures.ts';
import type { Gesture, GestureSet, RunRecording, SourceFile } from './types.ts';
import { parseYamlFile, type YamlDocument } from './yaml-document.ts';

/** Parses and checks a gestures file, and reads the pictures and recordings that it names. */
export function parseGestureSet(file: SourceFile, assets: ContentAssets = NO_ASSETS): Checked<GestureSet> {
  const { document, diagnostics } = expandGestures(parseYamlFile(file));
  const media = createMediaReader(document, assets);
  const checks = [
    () => diagnostics,
    checkHands,
    checkThen,
    () => checkPictures(document, media),
    () => checkRecordings(document, ['recordings', '*'], media, MOST_RUN_BYTES),
  ];
  const convert = (written: WrittenGestures) => convertGestures(written, computeFileId(file.path), media);
  return checkDocument(document, gesturesSchema, checks, convert, findGestureWord);
}

function* checkPictures(document: YamlDocument, media: MediaReader): Generator<Diagnostic> {
  for (const { path, text } of collectTexts(document, ['gestures', '*', 'picture', 'file'])) {
    if (text !== '') yield* media.checkPicture(path, text);
  }
}

function convertGestures({ title, note, ...written }: WrittenGestures, id: string, media: MediaReader): GestureSet {
  // Without prototype, so that a gesture called `constructor` is found only when it is there.
  const gestures: Record<string, Gesture> = Object.create(null);
  const recordings: Record<string, RunRecording> = Object.create(null);
  for (const [key, gesture] of Object.entries(written.gestures)) gestures[key] = convertGesture(gesture, media);
  for (const [key, recording] of Object.entries(written.recordings ?? {})) {
    const { tempo: tempoBeatsPerMinute, 'first-beat': firstBeatSeconds } = recording;
    recordings[key] = { ...convertRecording(recording, media), tempoBeatsPerMinute, firstBeatSeconds };
  }
  return { id, title, ...(note !== undefined && { note }), gestures, recordings };
}

function convertGesture({ then, move = 'hold', picture, ...rest }: WrittenGesture, media: MediaReader): Gesture {
  return {
    ...rest,
    // biome-ignore lint/suspicious/noThenProperty: the word authors write; it is no function, so nothing waits for it.
    ...(then && { then: completeThen(rest, then) }),
    move,
    ...(picture && { picture: { ...media.requirePicture(picture.file), ...creditOf(picture) } }),
  };
}

function creditOf({ credit }: { readonly credit?: string }): { readonly credit?: string } {
  return credit === undefined ? {} : { credit };
}
