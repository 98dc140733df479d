import * as z from 'zod/mini';
import { keyed, number, text } from './parts.ts';

const shape = {
  file: z.exactOptional(text('the name of a file in `content/sounds`')),
  link: z.exactOptional(text('an address that begins with `https://`')),
  credit: text('who is heard'),
  permission: text('on what terms it may be used'),
};

/** A recording as written. That a file, a link or both are there, and good, is checked apart. */
export const recordingSchema = keyed(shape);

/** A recording of a run as written. */
export const runRecordingSchema = keyed({
  ...shape,
  tempo: number(20, 240, 'beats a minute'),
  'first-beat': number(0, 600, 'seconds from the beginning of the recording'),
});

/** A recording as written, after the schema. */
export type WrittenRecording = z.infer<typeof recordingSchema>;
