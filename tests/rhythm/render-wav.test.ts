import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { computeTimeline } from '../../src/rhythm/compute-timeline.ts';
import { SAMPLE_RATE_HERTZ } from '../../src/rhythm/drum-voices.ts';
import { listStrokes } from '../../src/rhythm/list-strokes.ts';
import { planTracks } from '../../src/rhythm/plan-tracks.ts';
import { renderWav } from '../../src/rhythm/render-wav.ts';
import type { Rhythm, RunGroup, Track } from '../../src/rhythm/timeline-types.ts';
import { anyGroups, anyRhythm, buildGroups, buildRhythm, cutLast, monthGroups } from './sample-runs.ts';
import { findOnsets, readWav } from './wav-file.ts';

const trackOf = (groups: readonly RunGroup[], rhythm: Rhythm): Track => {
  const [track] = planTracks([computeTimeline(groups, rhythm)]).tracks;
  if (track === undefined) throw new Error('no track');
  return track;
};

/** Seconds at which something is struck, from the timeline alone. */
const strikesOf = (groups: readonly RunGroup[], rhythm: Rhythm) =>
  computeTimeline(groups, rhythm).events.flatMap((event) =>
    event.kind === 'rest'
      ? []
      : Array.from(
          { length: event.beats },
          (_, beat) => event.startsAtSeconds + ((event.endsAtSeconds - event.startsAtSeconds) * beat) / event.beats,
        ),
  );

describe('renderWav', () => {
  it('has the header that arithmetic asks for', () => {
    // By hand: 2 counts and 2 nights at 60 are 4 s, 28,800 samples at 7,200 a second (0x1C20), 57,600 bytes (0xE100) after
    // 44 of header; the size of the form is 57,636 (0xE124); 14,400 bytes a second (0x3840).
    const file = renderWav(trackOf(buildGroups(2), buildRhythm()));
    const hex = [...file.subarray(0, 44)].map((byte) => byte.toString(16).padStart(2, '0')).join(' ');
    expect(hex).toBe(
      '52 49 46 46 24 e1 00 00 57 41 56 45 66 6d 74 20 10 00 00 00 01 00 01 00 ' +
        '20 1c 00 00 40 38 00 00 02 00 10 00 64 61 74 61 00 e1 00 00',
    );
    expect(file.length).toBe(57_644);
    expect(SAMPLE_RATE_HERTZ).toBe(7200);
  });

  it.each([
    ['at 60', buildRhythm()],
    ['at 72, two beats a night, with rests', buildRhythm({ tempoBeatsPerMinute: 72, beatsPerItem: 2, restBeats: 1 })],
    ['at 96, slow first', buildRhythm({ tempoBeatsPerMinute: 96, slowFirst: true, countIn: 4 })],
    ['at 160, eight beats a night', buildRhythm({ tempoBeatsPerMinute: 160, beatsPerItem: 8, countIn: 'none' })],
    ['at 30', buildRhythm({ tempoBeatsPerMinute: 30 })],
  ])('is heard to begin each stroke within 5 ms of the timeline %s', (_, rhythm) => {
    const groups = cutLast(monthGroups.slice(0, 3), 2);
    const onsets = findOnsets(readWav(renderWav(trackOf(groups, rhythm))));
    const strikes = strikesOf(groups, rhythm);
    expect(onsets).toHaveLength(strikes.length);
    const late = onsets.map((onset, index) => Math.abs(onset - (strikes[index] ?? Number.NaN)));
    expect(Math.max(...late)).toBeLessThan(0.005);
  });

  it('never clips, begins and ends at 0, is silent before every beat, and stands on the middle line', () => {
    fc.assert(
      fc.property(anyGroups, anyRhythm, (groups, rhythm) => {
        const track = trackOf(groups, rhythm);
        const { samples, rate } = readWav(renderWav(track));
        // 3 dB below full scale: 32,767 x 10^(-3/20) = 23,197.
        expect(samples.reduce((most, sample) => Math.max(most, Math.abs(sample)), 0)).toBeLessThan(23_197);
        const silent = (from: number, to: number) =>
          samples.slice(Math.max(0, from), to).every((sample) => sample === 0);
        const ends = computeTimeline(groups, rhythm).events.map(({ endsAtSeconds }) =>
          Math.round(endsAtSeconds * rate),
        );
        expect(samples[0]).toBe(0);
        // At 160 beats a minute a beat lasts 375 ms: the last 30 are silent.
        expect(ends.filter((end) => !silent(end - Math.round(0.03 * rate), end + 1))).toEqual([]);
        const mean = samples.reduce((sum, sample) => sum + sample, 0) / samples.length;
        expect(Math.abs(mean)).toBeLessThan(0.1);
      }),
      { numRuns: 25 },
    );
  });

  it('is as long as the timeline, rounded to a sample', () => {
    fc.assert(
      fc.property(anyGroups, anyRhythm, (groups, rhythm) => {
        const { totalSeconds } = computeTimeline(groups, rhythm);
        const samples = Math.round(totalSeconds * SAMPLE_RATE_HERTZ);
        expect(renderWav(trackOf(groups, rhythm)).length).toBe(44 + 2 * samples);
      }),
      { numRuns: 50 },
    );
  });

  it('sounds in a cut just as the run alone would', () => {
    const part = computeTimeline(cutLast(monthGroups.slice(3, 5), 2), buildRhythm({ restBeats: 1 }));
    const { cuts } = planTracks([computeTimeline(monthGroups, buildRhythm({ restBeats: 1 })), part]);
    const cut = cuts[1];
    if (cut === undefined) throw new Error('no cut');
    expect(cut.startsAtSeconds).toBeGreaterThan(0);
    const [from, to] = [cut.startsAtSeconds, cut.endsAtSeconds].map((seconds) => 44 + 2 * seconds * SAMPLE_RATE_HERTZ);
    const alone = planTracks([part]).tracks.map(renderWav)[0];
    expect(renderWav(cut.track).slice(from, to)).toEqual(alone?.slice(44));
  });

  it('takes less than a megabyte for a month at 60', () => {
    expect(renderWav(trackOf(monthGroups, buildRhythm())).length).toBe(864_044);
  });

  it('fits into beats that are quicker than its strokes, without a click', () => {
    for (const tempoBeatsPerMinute of [200, 400, 3000]) {
      const track = trackOf(monthGroups, buildRhythm({ tempoBeatsPerMinute }));
      const { samples, rate } = readWav(renderWav(track));
      const lasts = listStrokes(computeTimeline(monthGroups, buildRhythm({ tempoBeatsPerMinute }))).map(
        (_, beat) => samples[Math.round(((beat + 1) * 60 * rate) / tempoBeatsPerMinute) - 1],
      );
      expect(new Set(lasts)).toEqual(new Set([0]));
    }
  });

  it('is nothing but a header for no strokes, and refuses what a file cannot hold', () => {
    const empty: Track = { name: 'beat-60-1', strokes: [], tempi: [], markers: [], totalSeconds: 0 };
    expect(readWav(renderWav(empty)).samples).toHaveLength(0);
    // By hand: 2^32 - 1 - 36 bytes are 298,261.62 s at 14,400 bytes a second.
    const tooLong: Track = { ...empty, strokes: ['drum'], tempi: [{ atBeat: 0, beatsPerMinute: 60 / 298_262 }] };
    expect(() => renderWav(tooLong)).toThrow(RangeError);
  });

  // No known answer but a watch: a change of the sound must be meant, and looked at as a picture of its waves.
  it('has the bytes that it had', () => {
    const file = renderWav(trackOf(buildGroups(2), buildRhythm({ beatsPerItem: 2 })));
    expect(createHash('sha256').update(file).digest('hex')).toBe(
      '13b191f44a12f7993e132d1ae6e8668e2ea31a7a88e386e5d9b1231679acfb32',
    );
  });
});
