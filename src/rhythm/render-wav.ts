import { computeBeatSeconds } from './beat-seconds.ts';
import { SAMPLE_RATE_HERTZ, voiceOf } from './drum-voices.ts';
import type { Track } from './timeline-types.ts';

const HEADER_BYTES = 44;
const BYTES_PER_SAMPLE = 2;
/** Samples over which a voice that a quick beat leaves no room for is faded out: 5 ms, so that it does not click. */
const FADE_SAMPLES = 36;
/** A size in the file has 32 bits, and that of the whole counts 36 bytes more than the samples. */
const MOST_DATA_BYTES = 2 ** 32 - 1 - 36;

/**
 * Renders a track as a WAV file: RIFF/WAVE, PCM, one channel, 16 bit, `SAMPLE_RATE_HERTZ`; as many samples as its
 * seconds take, rounded. Each stroke begins on the sample nearest to its beat, is silent again before the next beat,
 * and sounds the same wherever it stands, so that a cut of the track is the sound of its run.
 *
 * The order of bytes is written out, so that the file is the same on any machine. There is no pad byte, since samples
 * of two bytes always make an even number; and no list of titles, since the file's name must not tell what is in it.
 * @throws RangeError when the track is longer than a WAV file can be, about three days
 */
export function renderWav(track: Track): Uint8Array {
  const samples = Math.round(computeBeatSeconds(track.tempi, track.strokes.length) * SAMPLE_RATE_HERTZ);
  const dataBytes = samples * BYTES_PER_SAMPLE;
  if (dataBytes > MOST_DATA_BYTES)
    throw new RangeError(`a track of ${track.totalSeconds} s is too long for a WAV file`);
  const file = new Uint8Array(HEADER_BYTES + dataBytes);
  file.set(renderHeader(dataBytes));
  const startOf = (beat: number) => Math.round(computeBeatSeconds(track.tempi, beat) * SAMPLE_RATE_HERTZ);
  const voices = new Map<string, Uint8Array>();
  track.strokes.forEach((stroke, beat) => {
    if (stroke === 'rest') return;
    const start = startOf(beat);
    const voice = voiceOf(stroke);
    const length = Math.min(voice.length, startOf(beat + 1) - start);
    const key = `${stroke} ${length}`;
    const bytes = voices.get(key) ?? renderSamples(shorten(voice, length));
    voices.set(key, bytes);
    file.set(bytes, HEADER_BYTES + start * BYTES_PER_SAMPLE);
  });
  return file;
}

function renderHeader(dataBytes: number): Uint8Array {
  const header = new DataView(new ArrayBuffer(HEADER_BYTES));
  const write = (at: number, text: string) => {
    for (let index = 0; index < text.length; index++) header.setUint8(at + index, text.charCodeAt(index));
  };
  write(0, 'RIFF');
  header.setUint32(4, HEADER_BYTES - 8 + dataBytes, true);
  write(8, 'WAVE');
  write(12, 'fmt ');
  header.setUint32(16, 16, true);
  header.setUint16(20, 1, true); // PCM
  header.setUint16(22, 1, true); // channels
  header.setUint32(24, SAMPLE_RATE_HERTZ, true);
  header.setUint32(28, SAMPLE_RATE_HERTZ * BYTES_PER_SAMPLE, true);
  header.setUint16(32, BYTES_PER_SAMPLE, true); // bytes of one moment in all channels
  header.setUint16(34, 8 * BYTES_PER_SAMPLE, true);
  write(36, 'data');
  header.setUint32(40, dataBytes, true);
  return new Uint8Array(header.buffer);
}

/** Only beats quicker than 176 a minute cut a voice short. */
function shorten(voice: Int16Array, length: number): Int16Array {
  if (length >= voice.length) return voice;
  const fade = Math.min(FADE_SAMPLES, length);
  return voice.slice(0, length).map((sample, index) => Math.round(sample * Math.min(1, (length - 1 - index) / fade)));
}

function renderSamples(samples: Int16Array): Uint8Array {
  const bytes = new DataView(new ArrayBuffer(samples.length * BYTES_PER_SAMPLE));
  samples.forEach((sample, index) => {
    bytes.setInt16(index * BYTES_PER_SAMPLE, sample, true);
  });
  return new Uint8Array(bytes.buffer);
}
