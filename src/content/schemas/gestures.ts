import * as z from 'zod/mini';
import { choice, keyed, named, text } from './parts.ts';

const direction = choice(['up', 'down', 'in', 'out', 'front', 'back']);

const hand = keyed({
  shape: choice(['open', 'fist', 'curved', 'pointing', 'spread', 'pinch']),
  at: choice(['above-head', 'brow', 'face', 'chest', 'waist', 'side', 'low']),
  palm: direction,
  fingers: direction,
});

const gesture = keyed({
  left: z.exactOptional(hand),
  right: z.exactOptional(hand),
  both: z.exactOptional(hand),
  move: z.exactOptional(choice(['hold', 'open', 'close', 'rise', 'fall', 'cross', 'turn', 'ripple'])),
  cue: text('what to do, in plain words'),
  seated: text('how to do it sitting down, in plain words'),
});

/** A gestures file as written. Which hands may stand together is checked apart. */
export const gesturesSchema = keyed({
  title: text(),
  note: z.exactOptional(text()),
  gestures: named(gesture, 'gestures'),
});

/** A gestures file as written, after the schema. */
export type WrittenGestures = z.infer<typeof gesturesSchema>;
