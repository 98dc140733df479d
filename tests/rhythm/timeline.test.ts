import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { RunNight } from '../../src/calendar/almanac-types.ts';
import { computeTimeline } from '../../src/rhythm/timeline.ts';
import { buildRun, sampleRun } from './run-nights.ts';

describe('computeTimeline', () => {
  // By hand: at 60 beats a minute a beat is a second; at 72 it is 5/6 s; at 90 it is 2/3 s.
  it('gives the times worked out by hand at three tempos', () => {
    const starts = (tempoBeatsPerMinute: number, beatsPerNight: number, countIn: 'none' | number) =>
      computeTimeline(sampleRun.slice(0, 4), { tempoBeatsPerMinute, beatsPerNight, countIn });
    const slow = starts(60, 1, 'none');
    expect(slow.entries.map((entry) => entry.startsAtSeconds)).toEqual([0, 1, 2, 3]);
    expect([slow.countInSeconds, slow.totalSeconds]).toEqual([0, 4]);
    const middle = starts(72, 2, 4);
    expect(middle.entries.map((entry) => entry.startsAtSeconds)).toEqual([20 / 6, 5, 40 / 6, 50 / 6]);
    expect([middle.countInSeconds, middle.totalSeconds]).toEqual([20 / 6, 10]);
    const quick = starts(90, 3, 3);
    expect(quick.entries.map((entry) => entry.startsAtSeconds)).toEqual([2, 4, 6, 8]);
    expect([quick.countInSeconds, quick.totalSeconds]).toEqual([2, 10]);
  });

  it('counts beats from 1 without the count-in, and counts and stresses by group', () => {
    const { entries } = computeTimeline(sampleRun, { tempoBeatsPerMinute: 72, beatsPerNight: 4, countIn: 8 });
    expect(entries.map((entry) => entry.firstBeat)).toEqual([1, 5, 9, 13, 17, 21, 25]);
    expect(entries.map((entry) => entry.count)).toEqual([1, 2, 1, 2, 3, 1, 2]);
    expect(entries.map((entry) => entry.strong)).toEqual([true, false, true, false, false, true, false]);
  });

  it('stresses a first night said twice in a row only once', () => {
    const first = sampleRun.slice(0, 1);
    const { entries } = computeTimeline([...first, ...first], {
      tempoBeatsPerMinute: 60,
      beatsPerNight: 1,
      countIn: 0,
    });
    expect(entries.map((entry) => entry.strong)).toEqual([true, false]);
  });

  it('gives an empty timeline for no nights', () => {
    const timeline = computeTimeline([], { tempoBeatsPerMinute: 60, beatsPerNight: 4, countIn: 2 });
    expect(timeline).toEqual({ entries: [], countInSeconds: 2, totalSeconds: 2 });
  });

  it.each([
    [0, 1, 0],
    [-72, 1, 0],
    [Number.NaN, 1, 0],
    [Number.POSITIVE_INFINITY, 1, 0],
    [72, 0, 0],
    [72, 1.5, 0],
    [72, 1, -1],
    [72, 1, 0.5],
  ])('refuses tempo %d, %d beats a night, count-in %d', (tempoBeatsPerMinute, beatsPerNight, countIn) => {
    expect(() => computeTimeline(sampleRun, { tempoBeatsPerMinute, beatsPerNight, countIn })).toThrow(RangeError);
  });

  it('never drifts: each time is the nearest double to its fraction, and whole seconds are whole', () => {
    const long: RunNight[] = buildRun({ All: Array.from({ length: 3601 }, (_, index) => `Night ${index}`) });
    fc.assert(
      fc.property(fc.integer({ min: 20, max: 240 }), fc.integer({ min: 1, max: 8 }), (tempo, beats) => {
        const { entries } = computeTimeline(long, {
          tempoBeatsPerMinute: tempo,
          beatsPerNight: beats,
          countIn: 'none',
        });
        for (const index of [1, tempo, 3600]) {
          expect(entries[index]?.startsAtSeconds).toBe((index * beats * 60) / tempo);
        }
        expect(entries[tempo]?.startsAtSeconds).toBe(60 * beats);
      }),
      { numRuns: 25 },
    );
  });

  it('goes forward by the same step throughout', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 400, noNaN: true }),
        fc.integer({ min: 1, max: 16 }),
        fc.integer({ min: 0, max: 16 }),
        (tempoBeatsPerMinute, beatsPerNight, countIn) => {
          const timeline = computeTimeline(sampleRun, { tempoBeatsPerMinute, beatsPerNight, countIn });
          const times = [...timeline.entries.map((entry) => entry.startsAtSeconds), timeline.totalSeconds];
          const step = (beatsPerNight * 60) / tempoBeatsPerMinute;
          expect(times[0]).toBe(timeline.countInSeconds);
          times.slice(1).forEach((time, index) => {
            expect(Math.abs(time - (times[index] ?? Number.NaN) - step)).toBeLessThan(1e-9 * timeline.totalSeconds);
          });
        },
      ),
    );
  });
});
