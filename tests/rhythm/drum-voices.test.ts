import { describe, expect, it } from 'vitest';
import { SAMPLE_RATE_HERTZ, voiceOf } from '../../src/rhythm/drum-voices.ts';

const strokes = ['rim', 'drum', 'soft', 'count'] as const;
const peakOf = (samples: Int16Array) => samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0);

/** Loudness of a stretch of milliseconds. */
const energyOf = (samples: Int16Array, fromMs: number, toMs: number) =>
  cut(samples, fromMs, toMs).reduce((sum, sample) => sum + sample ** 2, 0);

const cut = (samples: Int16Array, fromMs: number, toMs: number) =>
  samples.slice((fromMs * SAMPLE_RATE_HERTZ) / 1000, (toMs * SAMPLE_RATE_HERTZ) / 1000);

/** Pitch in a stretch of milliseconds: how often it rises through the middle line, from the first time to the last. */
const pitchOf = (samples: Int16Array, fromMs: number, toMs: number) => {
  const part = cut(samples, fromMs, toMs);
  const rises = [...part.keys()].filter((index) => (part[index] ?? 0) >= 0 && (part[index - 1] ?? 0) < 0);
  return ((rises.length - 1) * SAMPLE_RATE_HERTZ) / ((rises.at(-1) ?? 0) - (rises[0] ?? 0));
};

/** Part of the energy above 1 kHz or so: that of what a moving mean over 1 ms takes away. */
const brightnessOf = (samples: Int16Array) => {
  const width = SAMPLE_RATE_HERTZ / 1000;
  const bright = samples.map((sample, index) => {
    const around = samples.slice(Math.max(0, index - width / 2), index + width / 2);
    return sample - around.reduce((sum, value) => sum + value, 0) / around.length;
  });
  return energyOf(bright, 0, 30) / energyOf(samples, 0, 30);
};

describe('voiceOf', () => {
  it.each(strokes)('swells from 0 and dies away to 0, without an offset: %s', (stroke) => {
    const voice = voiceOf(stroke);
    const peak = peakOf(voice);
    expect([voice[0], voice.at(-1)]).toEqual([0, 0]);
    expect(Math.abs(voice[1] ?? peak)).toBeLessThan(peak / 40);
    expect(peakOf(voice.slice(-80))).toBeLessThanOrEqual(peak / 500);
    expect(Math.abs(voice.reduce((sum, sample) => sum + sample, 0) / voice.length)).toBeLessThan(0.05);
  });

  it.each(strokes)('ends within the beat at 160 beats a minute: %s', (stroke) => {
    expect(voiceOf(stroke).length).toBeLessThan((60 / 160) * SAMPLE_RATE_HERTZ);
  });

  it('is loudest on a group’s first beat and softest where a night goes on, and never near full scale', () => {
    expect(
      ['rim', 'drum', 'count', 'soft'].map((stroke) => peakOf(voiceOf(stroke as (typeof strokes)[number]))),
    ).toEqual([22_000, 17_000, 10_000, 7000]);
  });

  it('sounds like a drum: the pitch falls, and most is over soon', () => {
    const drum = voiceOf('drum');
    expect(pitchOf(drum, 5, 35)).toBeGreaterThan(1.25 * pitchOf(drum, 150, 250));
    expect(pitchOf(drum, 150, 250)).toBeGreaterThan(120);
    expect(pitchOf(drum, 150, 250)).toBeLessThan(160);
    expect(energyOf(drum, 0, 80)).toBeGreaterThan(5 * energyOf(drum, 80, 340));
  });

  it('tells the strokes apart: the rim is bright, a count is high', () => {
    expect(brightnessOf(voiceOf('rim'))).toBeGreaterThan(2 * brightnessOf(voiceOf('drum')));
    expect(pitchOf(voiceOf('count'), 20, 80)).toBeGreaterThan(2 * pitchOf(voiceOf('drum'), 20, 80));
  });

  it('is synthesised once', () => {
    expect(voiceOf('drum')).toBe(voiceOf('drum'));
  });
});
