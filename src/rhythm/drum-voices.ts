import { createMemo } from '../calendar/memo.ts';
import { mixStroke } from './mix-stroke.ts';
import { type StruckBody, synthesiseBody } from './synthesise-body.ts';
import type { Stroke } from './timeline-types.ts';

/**
 * Samples a second. The highest tone of the strokes lies at 2,650 Hz, well below half of it, so that a higher rate
 * would add little but bytes: a month of 30 nights with its count-in takes 0.86 MB at 60 beats a minute. What 8,000 a
 * second would give beside it, the noise of the touch above 3,600 Hz, lies 29 dB or more below the first 10 ms of a
 * stroke. At most tempi a beat takes a whole number of samples.
 */
export const SAMPLE_RATE_HERTZ = 7200;

/**
 * A hand drum, struck softly. The tones stand to each other as the first three of an ideal round skin, 1 : 1.593 :
 * 2.136, the zeros of the Bessel functions J0, J1 and J2 (2.4048, 3.8317, 5.1356; from memory). All else was chosen by
 * looking at it and is common practice, no source: the skin is tightest right after the stroke, so the pitch falls; the
 * higher tones die first; and the lowest stays high enough for the loudspeaker of a small device.
 */
const drum: StruckBody = {
  lengthSeconds: 0.34,
  attackSeconds: 0.003,
  tones: [
    { fromHertz: 225, toHertz: 140, glideSeconds: 0.03, decaySeconds: 0.08, level: 1 },
    { fromHertz: 358, toHertz: 223, glideSeconds: 0.03, decaySeconds: 0.045, level: 0.4 },
    { fromHertz: 481, toHertz: 299, glideSeconds: 0.03, decaySeconds: 0.025, level: 0.2 },
  ],
  touch: { decaySeconds: 0.008, level: 0.5, brightness: 0.35 },
};

/** The same skin, touched with a finger. */
const touchedDrum: StruckBody = {
  lengthSeconds: 0.24,
  attackSeconds: 0.005,
  tones: [
    { fromHertz: 200, toHertz: 140, glideSeconds: 0.03, decaySeconds: 0.055, level: 1 },
    { fromHertz: 319, toHertz: 223, glideSeconds: 0.03, decaySeconds: 0.025, level: 0.2 },
  ],
  touch: { decaySeconds: 0.006, level: 0.15, brightness: 0.25 },
};

/** A smaller drum, an octave and more above the other: what is counted sounds unlike what is done. */
const smallDrum: StruckBody = {
  lengthSeconds: 0.16,
  attackSeconds: 0.002,
  tones: [
    { fromHertz: 480, toHertz: 370, glideSeconds: 0.02, decaySeconds: 0.032, level: 1 },
    { fromHertz: 765, toHertz: 589, glideSeconds: 0.02, decaySeconds: 0.018, level: 0.35 },
  ],
  touch: { decaySeconds: 0.004, level: 0.3, brightness: 0.5 },
};

/** A stick on the rim: wood, high and short. */
const rim: StruckBody = {
  lengthSeconds: 0.07,
  attackSeconds: 0.001,
  tones: [
    { fromHertz: 1690, toHertz: 1690, glideSeconds: 0.01, decaySeconds: 0.011, level: 0.55 },
    { fromHertz: 2650, toHertz: 2650, glideSeconds: 0.01, decaySeconds: 0.006, level: 0.3 },
  ],
  touch: { decaySeconds: 0.003, level: 0.4, brightness: 0.8 },
};

type SoundingStroke = Exclude<Stroke, 'rest'>;

/**
 * What is struck, and the loudest sample of it. The loudest of all lies 3.5 dB below full scale, which is 32,767; a
 * count is about half as loud as a drum, and a night that goes on less than that. Common practice, no source.
 */
const STROKES: Readonly<Record<SoundingStroke, { readonly bodies: readonly StruckBody[]; readonly peak: number }>> = {
  rim: { bodies: [drum, rim], peak: 22_000 },
  drum: { bodies: [drum], peak: 17_000 },
  count: { bodies: [smallDrum], peak: 10_000 },
  soft: { bodies: [touchedDrum], peak: 7000 },
};

const bodyOf = createMemo(4, (body: StruckBody) => synthesiseBody(body, SAMPLE_RATE_HERTZ));

/** The samples of a stroke at `SAMPLE_RATE_HERTZ`; synthesised once and then remembered. */
export const voiceOf = createMemo(4, (stroke: SoundingStroke) =>
  mixStroke(STROKES[stroke].bodies.map(bodyOf), STROKES[stroke].peak),
);
