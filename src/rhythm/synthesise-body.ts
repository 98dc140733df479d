/** A tone of a drum: its pitch falls from one frequency to another, its level from full to nothing. */
interface Tone {
  readonly fromHertz: number;
  readonly toHertz: number;
  /** Seconds in which the rest of the fall, in pitch or in level, shrinks to about a third (1/e). */
  readonly glideSeconds: number;
  readonly decaySeconds: number;
  readonly level: number;
}

/** The touch of the stick: noise that is over almost at once. */
interface Touch {
  readonly decaySeconds: number;
  readonly level: number;
  /** Part of each step that a low-pass filter lets through, above 0 to 1: the lower, the duller. */
  readonly brightness: number;
}

/** One thing that is struck. Levels are compared with each other alone. */
export interface StruckBody {
  readonly lengthSeconds: number;
  /** Seconds in which the sound swells from nothing. */
  readonly attackSeconds: number;
  readonly tones: readonly Tone[];
  readonly touch: Touch;
}

/**
 * Synthesises a body that is struck once. The samples begin and end at 0 and add up to 0, so that there is no click and
 * no offset that a loudspeaker would have to hold.
 *
 * The samples are the same on any machine: they are made with additions, multiplications, divisions and roundings
 * alone, which the language fixes to the last bit, and not with `Math.sin` or `Math.exp`, which it does not.
 * @param rateHertz samples a second
 * @returns as many samples as the body's length takes, in no unit
 */
export function synthesiseBody(body: StruckBody, rateHertz: number): Float64Array {
  const samples = new Float64Array(Math.round(body.lengthSeconds * rateHertz));
  for (const tone of body.tones) addTone(samples, tone, rateHertz);
  addTouch(samples, body.touch, rateHertz);
  const shape = shapeEnds(samples.length, body.attackSeconds * rateHertz);
  balance(samples, shape, keep(body.lengthSeconds / 4, rateHertz));
  return samples;
}

/** Samples for which a tone keeps its pitch: 2 ms at 7,200 a second, too short to be heard as a step. */
const PITCH_STEP = 16;

/** A point that goes around a circle: each sample turns it a little, so that no sine is worked out but once a step. */
function addTone(samples: Float64Array, tone: Tone, rate: number): void {
  const glideKept = 1 - PITCH_STEP / (tone.glideSeconds * rate);
  const levelKept = keep(tone.decaySeconds, rate);
  let above = tone.fromHertz - tone.toHertz;
  let [across, up] = [tone.level, 0];
  let [turnAcross, turnUp] = [0, 0];
  const length = countHeard(samples, tone.decaySeconds, rate);
  for (let index = 0; index < length; index++) {
    if (index % PITCH_STEP === 0) {
      const turns = (tone.toHertz + above) / rate;
      turnAcross = levelKept * sineOfTurns(turns + 0.25);
      turnUp = levelKept * sineOfTurns(turns);
      above *= glideKept;
    }
    samples[index] = (samples[index] ?? 0) + up;
    const before = across;
    across = before * turnAcross - up * turnUp;
    up = before * turnUp + up * turnAcross;
  }
}

/** Written out: even a power may differ in its last bit. */
const HALF_OF_32_BITS = 2_147_483_648;

/** Noise from whole numbers: a linear congruential generator with the constants of Numerical Recipes, from memory. */
function addTouch(samples: Float64Array, touch: Touch, rate: number): void {
  const levelKept = keep(touch.decaySeconds, rate);
  let state = 1;
  let filtered = 0;
  let level = touch.level;
  const length = countHeard(samples, touch.decaySeconds, rate);
  for (let index = 0; index < length; index++) {
    state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
    filtered += touch.brightness * (state / HALF_OF_32_BITS - 1 - filtered);
    samples[index] = (samples[index] ?? 0) + level * filtered;
    level *= levelKept;
  }
}

/** Samples after which a level lies below a step of 16 bit: it has shrunk to a third twelve times, to 6 millionths. */
function countHeard(samples: Float64Array, decaySeconds: number, rate: number): number {
  return Math.min(samples.length, Math.round(12 * decaySeconds * rate));
}

/** What is left of a fall after one sample. */
function keep(seconds: number, rate: number): number {
  return 1 - 1 / (seconds * rate);
}

/** A swell from 0 at the beginning, and over the last quarter a fade to 0 at the last sample. */
function shapeEnds(length: number, attack: number): Float64Array {
  const shape = new Float64Array(length);
  for (let index = 0; index < length; index++) {
    shape[index] = smoothStep(index / attack) * smoothStep((length - 1 - index) / (length / 4));
  }
  return shape;
}

/** Shapes the samples and takes away what they have more on one side than on the other, where they are loud. */
function balance(samples: Float64Array, shape: Float64Array, kept: number): void {
  let sum = 0;
  let weights = 0;
  let weight = 1;
  for (let index = 0; index < samples.length; index++) {
    sum += (samples[index] ?? 0) * (shape[index] ?? 0);
    weights += weight * (shape[index] ?? 0);
    weight *= kept;
  }
  weight = 1;
  for (let index = 0; index < samples.length; index++) {
    samples[index] = ((samples[index] ?? 0) - (weight * sum) / weights) * (shape[index] ?? 0);
    weight *= kept;
  }
}

/** From 0 to 1, with no corner at either end. */
function smoothStep(way: number): number {
  const share = Math.min(1, way);
  return share * share * (3 - 2 * share);
}

/** The sine of an angle in turns, by its series to the ninth power: within 4 millionths. */
function sineOfTurns(turns: number): number {
  const part = turns - Math.floor(turns + 0.5);
  const quarter = part > 0.25 ? 0.5 - part : part < -0.25 ? -0.5 - part : part;
  const angle = quarter * 6.283185307179586;
  const square = angle * angle;
  return angle * (1 - (square / 6) * (1 - (square / 20) * (1 - (square / 42) * (1 - square / 72))));
}
