import type { RunRecording } from '../content/types.ts';
import { computeTimeline } from './compute-timeline.ts';
import type { Rhythm, RunGroup, Timeline } from './timeline-types.ts';

/** A run as a recording has it. */
export interface RecordedRun {
  /** On the recording's own tempo; its times count from the first beat of the run, not of the recording. */
  readonly timeline: Timeline;
  /** Where the run lies in the recording, as `TrackCut` says it for a track. */
  readonly startsAtSeconds: number;
  readonly endsAtSeconds: number;
}

/**
 * Lays a run over a teacher's own recording: its tempo takes the place of the rhythm's, and the run starts at its first
 * beat. All else, count-in and passes too, must be in the recording as the rhythm has it.
 * @throws RangeError as `computeTimeline` does, and when the first beat lies before the recording
 */
export function followRecording(
  groups: readonly RunGroup[],
  rhythm: Rhythm,
  { tempoBeatsPerMinute, firstBeatSeconds }: Pick<RunRecording, 'tempoBeatsPerMinute' | 'firstBeatSeconds'>,
): RecordedRun {
  if (!(Number.isFinite(firstBeatSeconds) && firstBeatSeconds >= 0)) {
    throw new RangeError(`the first beat must be a number of seconds from 0, not ${firstBeatSeconds}`);
  }
  const timeline = computeTimeline(groups, { ...rhythm, tempoBeatsPerMinute });
  return { timeline, startsAtSeconds: firstBeatSeconds, endsAtSeconds: firstBeatSeconds + timeline.totalSeconds };
}
