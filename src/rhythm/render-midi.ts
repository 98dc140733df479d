import { encodeText, metaEvent, renderChunk, variableLength, wholeNumber } from './midi-bytes.ts';
import type { Stroke, TempoChange, Track } from './timeline-types.ts';

/** Ticks in a quarter note, which is a beat. Nothing lies between beats but the ends of notes, half a beat on. */
export const TICKS_PER_BEAT = 96;

const MICROSECONDS_PER_MINUTE = 60_000_000;
/** The tempo of a file has 24 bits. */
const MOST_MICROSECONDS = 2 ** 24 - 1;

/** Channel 10 counted from 1: the percussion of General MIDI. */
const PERCUSSION_CHANNEL = 9;

/** Keys of the percussion map of General MIDI level 1 (MIDI Manufacturers Association, 1991; from memory). */
const SIDE_STICK = 37;
const LOW_TOM = 45;
const HIGH_TOM = 50;

/** Keys that are struck, with how hard, 1 to 127; the harder, the louder the stroke is in the sound file. */
const NOTES: Readonly<Record<Stroke, readonly { readonly key: number; readonly velocity: number }[]>> = {
  rim: [
    { key: SIDE_STICK, velocity: 104 },
    { key: LOW_TOM, velocity: 104 },
  ],
  drum: [{ key: LOW_TOM, velocity: 88 }],
  count: [{ key: HIGH_TOM, velocity: 64 }],
  soft: [{ key: LOW_TOM, velocity: 44 }],
  rest: [],
};

/** An event of the file: what it is, without its time. */
interface TimedBytes {
  readonly atTick: number;
  readonly bytes: readonly number[];
}

/**
 * Renders a track as a Standard MIDI File 1.0 of format 0, one track on the percussion channel: name, tempo, time
 * signature, the markers of the track, and its strokes as notes of half a beat. It ends where the track ends.
 *
 * A beat is a quarter note, so that every stroke lies on its tick exactly, whatever the tempo. The file holds the tempo
 * in whole microseconds a beat, at most half of one off: after a thousand beats a stroke is at most half a millisecond
 * from the timeline, where a tick takes 4 at 160 beats a minute.
 *
 * A bar is a night or a month, as many quarters as it lasts; counted beats and rests are bars of one quarter. So bar
 * lines stand where names begin, and the signature changes only where counting and doing take turns.
 *
 * Text is UTF-8, as is common practice, no source; the standard promises no more than ASCII, so a reader may show
 * accents wrongly.
 * @throws RangeError when a tempo is below 3.58 beats a minute or above 120 million: a file cannot say it
 */
export function renderMidi(track: Track): Uint8Array {
  const events: TimedBytes[] = [
    // In this order where they share a tick: what holds for a note comes before it, and a note ends before the next.
    { atTick: 0, bytes: metaEvent(0x03, encodeText(track.name)) },
    ...track.tempi.map(renderTempo),
    ...listSignatures(track.strokes).map(renderSignature),
    ...track.markers.map(({ atBeat, text }) => ({
      atTick: atBeat * TICKS_PER_BEAT,
      bytes: metaEvent(0x06, encodeText(text)),
    })),
    ...track.strokes.flatMap(renderStroke),
    { atTick: track.strokes.length * TICKS_PER_BEAT, bytes: metaEvent(0x2f, []) },
  ].sort((a, b) => a.atTick - b.atTick);
  const body = events.flatMap(({ atTick, bytes }, index) => [
    ...variableLength(atTick - (events[index - 1]?.atTick ?? 0)),
    ...bytes,
  ]);
  const header = [...wholeNumber(0, 2), ...wholeNumber(1, 2), ...wholeNumber(TICKS_PER_BEAT, 2)];
  return Uint8Array.from([...renderChunk('MThd', header), ...renderChunk('MTrk', body)]);
}

function renderTempo({ atBeat, beatsPerMinute }: TempoChange): TimedBytes {
  const microseconds = Math.round(MICROSECONDS_PER_MINUTE / beatsPerMinute);
  if (!(microseconds >= 1 && microseconds <= MOST_MICROSECONDS)) {
    throw new RangeError(`a MIDI file cannot say a tempo of ${beatsPerMinute}`);
  }
  return { atTick: atBeat * TICKS_PER_BEAT, bytes: metaEvent(0x51, wholeNumber(microseconds, 3)) };
}

/** A number of quarters in a bar, from a beat on. */
interface Signature {
  readonly atBeat: number;
  readonly quarters: number;
}

function listSignatures(strokes: readonly Stroke[]): Signature[] {
  const signatures: Signature[] = [];
  for (let beat = 0; beat < strokes.length; ) {
    const quarters = countBar(strokes, beat);
    if (signatures.at(-1)?.quarters !== quarters) signatures.push({ atBeat: beat, quarters });
    beat += quarters;
  }
  return signatures;
}

/** Beats of the bar that begins on a beat. */
function countBar(strokes: readonly Stroke[], beat: number): number {
  let end = beat + 1;
  while (strokes[end] === 'soft') end++;
  // The standard has a byte for it; a name that lasts longer goes on in another bar.
  return Math.min(end - beat, 255);
}

/**
 * The last three bytes: the lower number of the signature is 4, 2 to the power of 2; a metronome clicks each quarter,
 * which takes 24 MIDI clocks; and a quarter has eight thirty-seconds.
 */
function renderSignature({ atBeat, quarters }: Signature): TimedBytes {
  return { atTick: atBeat * TICKS_PER_BEAT, bytes: metaEvent(0x58, [quarters, 2, 24, 8]) };
}

function renderStroke(stroke: Stroke, beat: number): TimedBytes[] {
  const atTick = beat * TICKS_PER_BEAT;
  const endTick = atTick + TICKS_PER_BEAT / 2;
  return NOTES[stroke].flatMap(({ key, velocity }) => [
    { atTick, bytes: [0x90 + PERCUSSION_CHANNEL, key, velocity] },
    { atTick: endTick, bytes: [0x80 + PERCUSSION_CHANNEL, key, 64] },
  ]);
}
