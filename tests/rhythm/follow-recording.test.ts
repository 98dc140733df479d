import { describe, expect, it } from 'vitest';
import { followRecording } from '../../src/rhythm/follow-recording.ts';
import { buildGroups, buildRhythm } from './sample-runs.ts';

const rhythm = buildRhythm({ tempoBeatsPerMinute: 60, restBeats: 1 });

describe('followRecording', () => {
  it('keeps the recording’s beat and starts where it starts', () => {
    // By hand: 11 beats of 60/88 s are 7.5 s.
    const run = followRecording(buildGroups(2, 3), rhythm, { tempoBeatsPerMinute: 88, firstBeatSeconds: 2.25 });
    expect(run.timeline.rhythm).toEqual({ ...rhythm, tempoBeatsPerMinute: 88 });
    expect(run.timeline.events[0]?.startsAtSeconds).toBe(0);
    expect([run.timeline.totalSeconds, run.startsAtSeconds, run.endsAtSeconds]).toEqual([7.5, 2.25, 9.75]);
  });

  it.each([-1, Number.NaN, Number.POSITIVE_INFINITY])('refuses a first beat at %d', (firstBeatSeconds) => {
    const recording = { tempoBeatsPerMinute: 88, firstBeatSeconds };
    expect(() => followRecording(buildGroups(2), rhythm, recording)).toThrow(RangeError);
  });

  it('refuses a tempo that is none', () => {
    const recording = { tempoBeatsPerMinute: 0, firstBeatSeconds: 0 };
    expect(() => followRecording(buildGroups(2), rhythm, recording)).toThrow(RangeError);
  });
});
