import type { RunNight } from '../calendar/almanac-types.ts';

/** How the nights are beaten. */
export interface Rhythm {
  /** Beats in a minute, above 0; need not be whole. */
  readonly tempoBeatsPerMinute: number;
  /** Whole beats that each night lasts, 1 or more. */
  readonly beatsPerNight: number;
  /** Whole beats that are counted before the first night; `none` for none. */
  readonly countIn: 'none' | number;
}

/** One night on the beat. */
export interface TimelineEntry {
  readonly night: RunNight;
  /** 1-based beat on which the night begins; the count-in is not counted. */
  readonly firstBeat: number;
  /** 1-based place of the night in its group in the calendar, whatever was selected. */
  readonly count: number;
  /** Seconds from the very beginning, count-in and all; the nearest double to the exact fraction. */
  readonly startsAtSeconds: number;
  /** True for the first night of a group; not for the same night said again straight after itself. */
  readonly strong: boolean;
}

export interface Timeline {
  readonly entries: readonly TimelineEntry[];
  /** Seconds of the count-in; 0 without one. */
  readonly countInSeconds: number;
  /** Seconds from the very beginning to the end of the last night's last beat. */
  readonly totalSeconds: number;
}

/**
 * Puts nights on the beat, one after another. Each time is worked out from its beat number by one division, so that
 * errors do not add up: beat 3,601 at 60 beats a minute is exactly at 3,600 seconds.
 * @param nights in the order in which they are beaten; may be empty
 * @throws RangeError when the tempo is not a finite number above 0, or a number of beats is not whole or too small
 */
export function computeTimeline(nights: readonly RunNight[], rhythm: Rhythm): Timeline {
  const { tempoBeatsPerMinute, beatsPerNight } = rhythm;
  const countInBeats = rhythm.countIn === 'none' ? 0 : rhythm.countIn;
  requireTempo(tempoBeatsPerMinute);
  requireBeats(beatsPerNight, 1, 'beats a night');
  requireBeats(countInBeats, 0, 'beats of the count-in');
  const secondsAfter = (beats: number): number => (beats * 60) / tempoBeatsPerMinute;
  const entries = nights.map((night, index) => ({
    night,
    firstBeat: index * beatsPerNight + 1,
    count: night.numberInGroup,
    startsAtSeconds: secondsAfter(countInBeats + index * beatsPerNight),
    strong: night.numberInGroup === 1 && nights[index - 1]?.number !== night.number,
  }));
  return {
    entries,
    countInSeconds: secondsAfter(countInBeats),
    totalSeconds: secondsAfter(countInBeats + nights.length * beatsPerNight),
  };
}

function requireTempo(tempo: number): void {
  if (!(Number.isFinite(tempo) && tempo > 0)) throw new RangeError(`a tempo must be a number above 0, not ${tempo}`);
}

function requireBeats(beats: number, least: number, what: string): void {
  if (!(Number.isSafeInteger(beats) && beats >= least)) {
    throw new RangeError(`${what} must be a whole number from ${least}, not ${beats}`);
  }
}
