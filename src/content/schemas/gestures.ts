import * as z from 'zod/mini';
import { choice, keyed, named, text } from './parts.ts';
import { runRecordingSchema } from './recording.ts';

/** The six ways a palm or the fingers can point. `in` is towards the middle of the body, `front` away from it. */
export const DIRECTIONS = ['up', 'down', 'in', 'out', 'front', 'back'] as const;

const words = {
  shape: choice(['open', 'fist', 'curved', 'pointing', 'spread', 'pinch']),
  at: choice(['above-head', 'brow', 'face', 'chest', 'waist', 'side', 'low']),
  palm: choice(DIRECTIONS),
  fingers: choice(DIRECTIONS),
};

const A_HAND = 'the keys `shape`, `at`, `palm` and `fingers`, or a line like `open at chest, palm up, fingers in`';
const hand = keyed(words, A_HAND);

/** A hand of the second pose says what becomes different. */
const handThen = keyed(
  {
    shape: z.exactOptional(words.shape),
    at: z.exactOptional(words.at),
    palm: z.exactOptional(words.palm),
    fingers: z.exactOptional(words.fingers),
  },
  'some of the keys `shape`, `at`, `palm` and `fingers`, or a line like `at side, palm down`',
);

const gesture = keyed({
  left: z.exactOptional(hand),
  right: z.exactOptional(hand),
  both: z.exactOptional(hand),
  // biome-ignore lint/suspicious/noThenProperty: the word authors write; it is no function, so nothing waits for it.
  then: z.exactOptional(
    keyed({
      left: z.exactOptional(handThen),
      right: z.exactOptional(handThen),
      both: z.exactOptional(handThen),
    }),
  ),
  move: z.exactOptional(choice(['hold', 'open', 'close', 'rise', 'fall', 'cross', 'turn', 'ripple'])),
  cue: text('what to do, in plain words'),
  seated: text('how to do it sitting down, in plain words'),
  picture: z.exactOptional(
    keyed(
      { file: text('the name of a file in `content/images`'), credit: z.exactOptional(text('who made it')) },
      'the name of a file in `content/images`, or the keys `file` and `credit`',
    ),
  ),
});

/** A gestures file as written, short forms written out. Which hands may stand together is checked apart. */
export const gesturesSchema = keyed({
  title: text(),
  note: z.exactOptional(text()),
  gestures: named(gesture, 'gestures'),
  recordings: z.exactOptional(named(runRecordingSchema, 'recordings')),
});

/** A gestures file as written, after the schema. */
export type WrittenGestures = z.infer<typeof gesturesSchema>;

/** A gesture as written. */
export type WrittenGesture = WrittenGestures['gestures'][string];
