import { afterEach, describe, expect, it, vi } from 'vitest';
import { mixStroke } from '../../src/rhythm/mix-stroke.ts';
import { type StruckBody, synthesiseBody } from '../../src/rhythm/synthesise-body.ts';

const RATE = 8000;

/** One tone that neither falls nor, to speak of, dies away, without the touch of a stick. */
const plain: StruckBody = {
  lengthSeconds: 0.2,
  attackSeconds: 0.002,
  tones: [{ fromHertz: 400, toHertz: 400, glideSeconds: 1, decaySeconds: 1000, level: 1 }],
  touch: { decaySeconds: 0.01, level: 0, brightness: 1 },
};

afterEach(() => {
  vi.restoreAllMocks();
});

describe('synthesiseBody', () => {
  it('is the tone that it is asked for, as the library’s sine has it', () => {
    const samples = synthesiseBody(plain, RATE);
    expect(samples).toHaveLength(1600);
    // Between the attack, 16 samples, and the fade, the last 400; the balance takes away less than a hundredth.
    const errors = [...samples.keys()]
      .slice(16, 1200)
      .map((index) => Math.abs((samples[index] ?? 0) - Math.sin((2 * Math.PI * 400 * index) / RATE)));
    expect(Math.max(...errors)).toBeLessThan(0.01);
  });

  it('falls in pitch as it is asked to', () => {
    const [tone] = plain.tones;
    if (tone === undefined) throw new Error('no tone');
    const falling = { ...plain, tones: [{ ...tone, fromHertz: 800, glideSeconds: 0.05 }] };
    const samples = synthesiseBody(falling, RATE);
    const rises = [...samples.keys()].filter((n) => (samples[n] ?? 0) >= 0 && (samples[n - 1] ?? 0) < 0);
    // By hand: turns in t seconds are 400 t + 400 x 0.05 (1 - e^(-t / 0.05)), at 0.15 s 60 + 20 x 0.9502 = 79.0.
    expect(rises.filter((index) => index <= 0.15 * RATE).length).toBeGreaterThanOrEqual(78);
    expect(rises.filter((index) => index <= 0.15 * RATE).length).toBeLessThanOrEqual(80);
  });

  it('begins and ends at 0 and adds up to 0, with noise too', () => {
    const samples = synthesiseBody({ ...plain, touch: { decaySeconds: 0.05, level: 3, brightness: 0.1 } }, RATE);
    expect([samples[0] === 0, samples.at(-1) === 0]).toEqual([true, true]);
    expect(Math.abs(samples.reduce((sum, sample) => sum + sample, 0))).toBeLessThan(1e-9);
  });

  it('asks for no function whose last bit differs from machine to machine', () => {
    const loose = ['sin', 'cos', 'tan', 'exp', 'expm1', 'log', 'pow', 'sqrt', 'tanh', 'random'] as const;
    const spies = loose.map((name) => vi.spyOn(Math, name));
    mixStroke([synthesiseBody(plain, RATE)], 20_000);
    expect(spies.filter((spy) => spy.mock.calls.length > 0)).toEqual([]);
  });
});
